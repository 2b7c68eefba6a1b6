// Is the environment read as documented?
import { join } from "node:path";
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

describe("certificate and key", () => {
  const file = (part: "cert" | "key"): string =>
    join(import.meta.dirname, `../../fixtures/tls/test-only-${part}.pem`);
  const complaint = (words: readonly string[]): string => {
    try {
      readConfig({}, words);
      return "none";
    } catch (error) {
      if (error instanceof InputError) return error.message;
      throw error;
    }
  };

  it("are read from the files that flags or environment name; a flag goes before", () => {
    const flags = readConfig({ TLS_CERT: "none.pem", TLS_KEY: file("key") }, [
      "--tls-cert",
      file("cert"),
    ]);
    expect(flags.tls?.cert).toContain("BEGIN CERTIFICATE");
    expect(flags.tls?.key).toContain("BEGIN PRIVATE KEY");
    expect(readConfig({ TLS_CERT: file("cert"), TLS_KEY: file("key") }).tls).toEqual(flags.tls);
  });

  it("may both be left out", () => {
    expect(readConfig({})).not.toHaveProperty("tls");
  });

  it.each([
    [["--tls-key", file("key")], "/TLS_CERT: It is missing."],
    [["--tls-cert", "no/such.pem", "--tls-key", file("key")], "(ENOENT)"],
    [["--tls-cert", file("key"), "--tls-key", file("key")], "Certificate and key cannot be used"],
    [["--tls", "x"], "The flags are --tls-cert FILE and --tls-key FILE."],
    [["--tls-cert"], "The flags are"],
  ])("%j are refused with what to do instead", (words, message) => {
    expect(complaint(words)).toContain(message);
  });
});
