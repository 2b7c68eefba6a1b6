// Does the built command behave as a process? Needs the build, as `npm test` has it.
import { spawn, spawnSync } from "node:child_process";
import { once } from "node:events";
import { existsSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";

const server = join(import.meta.dirname, "../../packages/server");
const bin = join(server, "bin/half-order.js");
const isBuilt = existsSync(join(server, "dist/command/dispatch.js"));

describe.skipIf(!isBuilt)("the process", () => {
  it("ranks what is piped in", () => {
    const input = '{"engine":"demo.tern","findings":[{"finding":"codes","answer":["P0302"]}]}';
    const run = spawnSync(process.execPath, [bin, "rank", "--json"], { input, encoding: "utf8" });
    expect({ status: run.status, stderr: run.stderr }).toEqual({ status: 0, stderr: "" });
    expect(JSON.parse(run.stdout).ranking[0].cylinders).toContain(2);
  });

  it("ends with 2 and says why when the input cannot be used", () => {
    const run = spawnSync(process.execPath, [bin, "rank"], { input: "{", encoding: "utf8" });
    expect(run.status).toBe(2);
    expect(run.stderr).toContain("line 1, column 2");
    expect(run.stdout).toBe("");
  });

  it("is quiet when its reader goes away", async () => {
    const child = spawn(process.execPath, [bin, "faults", "--json"]);
    let err = "";
    child.stderr.on("data", (piece) => (err += piece));
    child.stdout.destroy();
    await once(child, "close");
    expect(err).toBe("");
  });
});
