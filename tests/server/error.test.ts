// Is every answer that is not what was asked for of one form, and does it say what to do?
import { describe, expect, it } from "vitest";
import { buildApp } from "../../packages/server/src/app.ts";
import { buildBareApp } from "../helper/build-app.ts";

const app = await buildBareApp();
const rankUrl = "/api/v1/rank";

const postText = (payload: string, type = "application/json") =>
  app.inject({ method: "POST", url: rankUrl, payload, headers: { "content-type": type } });

/** The form of RFC 9457, whatever went wrong. */
function expectDetails(
  response: Awaited<ReturnType<typeof postText>>,
  status: number,
  title: string,
  instance = rankUrl,
): void {
  expect(response.statusCode).toBe(status);
  expect(response.headers["content-type"]).toMatch(/^application\/problem\+json/);
  expect(response.json()).toMatchObject({ type: "about:blank", title, status, instance });
  expect(response.json().detail).toMatch(/\.$/);
}

describe("a request that cannot be used", () => {
  it("has line, column and a hint for broken JSON", async () => {
    const response = await postText('{\n  "engine": "demo.tern",\n}');
    expectDetails(response, 400, "Bad Request");
    expect(response.json().problems).toEqual([
      {
        code: "json-broken",
        path: "",
        message: 'This is not JSON: at line 3, column 1, "}" stands where it cannot.',
        hint: "Take away the comma before it.",
      },
    ]);
  });

  it("says that nothing was sent", async () => {
    const response = await app.inject({ method: "POST", url: rankUrl });
    expectDetails(response, 400, "Bad Request");
    expect(response.json().problems).toMatchObject([
      { code: "field-missing", path: "", message: "Nothing was given." },
    ]);
  });

  it("says so of an empty JSON body too", async () => {
    const response = await postText("");
    expectDetails(response, 400, "Bad Request");
    expect(response.json().problems).toMatchObject([{ code: "json-empty" }]);
  });

  it("refuses other kinds of body", async () => {
    const response = await postText("engine: demo.tern", "text/yaml");
    expectDetails(response, 415, "Unsupported Media Type");
    expect(response.json().detail).toContain("content-type: application/json");
  });

  it("refuses more than 1 MB", async () => {
    const note = "x".repeat(1024 * 1024);
    const response = await postText(JSON.stringify({ engine: "demo.tern", findings: [], note }));
    expectDetails(response, 413, "Payload Too Large");
    expect(response.json().detail).toContain("1 MB");
  });
});

describe("a path or method that is not there", () => {
  it("is a 404 of the same form", async () => {
    const response = await app.inject({ url: "/api/v1/nothing?x=1" });
    expectDetails(response, 404, "Not Found", "/api/v1/nothing?x=1");
    expect(response.json().detail).toBe("There is nothing at /api/v1/nothing for GET.");
  });

  it.each([
    ["GET", rankUrl, "POST"],
    ["DELETE", "/api/v1/faults", "GET, HEAD"],
    ["PUT", "/api/v1/engines/demo.tern", "GET, HEAD"],
    ["PATCH", "/api/v1/openapi.json", "GET, HEAD"],
    ["POST", "/healthz?x=1", "GET, HEAD"],
  ] as const)("%s %s is a 405 that names the methods", async (method, url, allow) => {
    const response = await app.inject({ method, url });
    expectDetails(response, 405, "Method Not Allowed", url);
    expect(response.headers["allow"]).toBe(allow);
  });

  it.each(["/%zz", "/api/v1/faults/%E0%A4"])("%s cannot be read, and says so", async (url) => {
    const response = await app.inject({ url });
    expectDetails(response, 400, "Bad Request", url);
    expect(response.json().detail).toContain("hexadecimal");
  });

  it("an id longer than any is a 414 of the same form", async () => {
    const url = `/api/v1/faults/${"x".repeat(101)}`;
    expectDetails(await app.inject({ url }), 414, "URI Too Long", url);
  });

  it("a path that only resembles a route is a 404", async () => {
    const response = await app.inject({ method: "DELETE", url: "/api/v1/openapi-json" });
    expect(response.statusCode).toBe(404);
  });
});

it("a failure of our own hides its reason from the asker and tells the log", async () => {
  const log: string[] = [];
  const logging = await buildApp(
    { page: "" },
    { level: "error", stream: { write: (line: string) => void log.push(line) } },
  );
  logging.get("/boom", () => {
    throw new Error("secret reason");
  });
  const response = await logging.inject({ url: "/boom" });
  expectDetails(response, 500, "Internal Server Error", "/boom");
  expect(response.body).not.toContain("secret reason");
  expect(log.join("")).toContain("secret reason");
});

it("HEAD answers as GET does, without the body", async () => {
  const [head, get] = [
    await app.inject({ method: "HEAD", url: "/api/v1/checks" }),
    await app.inject({ method: "GET", url: "/api/v1/checks" }),
  ];
  expect(head.statusCode).toBe(200);
  expect(head.body).toBe("");
  expect(head.headers["content-length"]).toBe(get.headers["content-length"]);
});
