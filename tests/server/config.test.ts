// Is the environment read as documented?
import { InputError } from "@half-order/core";
import { describe, expect, it } from "vitest";
import { readConfig } from "../../packages/server/src/config.ts";

describe("the configuration", () => {
  it("listens to this computer alone unless told otherwise", () => {
    expect(readConfig({})).toMatchObject({ host: "127.0.0.1", port: 7205 });
  });

  it("takes what is empty for not set", () => {
    expect(readConfig({ HOST: "", PORT: " " })).toMatchObject({ host: "127.0.0.1", port: 7205 });
  });

  it("reads HOST and PORT and ignores the rest", () => {
    const environment = { HOST: "127.0.0.2", PORT: "8000", PATH: "/bin" };
    expect(readConfig(environment)).toMatchObject({ host: "127.0.0.2", port: 8000 });
  });

  it("finds the page beside the server", () => {
    expect(readConfig({}).page).toMatch(/packages[\\/]web[\\/]dist$/);
  });

  it.each([
    ["http", '/PORT: "http" was not expected here. Write a number: the port, for example 7205.'],
    ["70000", "/PORT: 70000 is too big. Write at most 65535."],
    ["-1", '/PORT: "-1" was not expected here. Write a number: the port, for example 7205.'],
  ])("refuses PORT=%s", (PORT, message) => {
    expect(() => readConfig({ PORT })).toThrow(InputError);
    expect(() => readConfig({ PORT })).toThrow(message);
  });
});
