// Do the tools say what the project promises: exact versions, a portable lock file, scripts that exist?
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { tallyLine } from "../scripts/tally.mjs";

const root = join(import.meta.dirname, "..");
const text = (file: string): string => readFileSync(join(root, file), "utf8");

interface Manifest {
  readonly scripts?: Record<string, string>;
  readonly dependencies?: Record<string, string>;
  readonly devDependencies?: Record<string, string>;
}
const manifest = (file: string): Manifest => JSON.parse(text(file)) as Manifest;

const manifests = ["package.json", "packages/core/package.json"]
  .concat(["packages/server/package.json", "packages/web/package.json"])
  .map((file) => ({ file, ...manifest(file) }));

describe("the lock file", () => {
  const lock = JSON.parse(text("package-lock.json")) as {
    packages: Record<string, { resolved?: string }>;
  };
  const packages = Object.entries(lock.packages);

  it("holds no download addresses", () => {
    expect(packages.length).toBeGreaterThan(50);
    const addressed = packages.filter(([, { resolved }]) => resolved?.includes("://"));
    expect(addressed.map(([name]) => name)).toEqual([]);
  });
});

describe("the manifests", () => {
  it.each(manifests)("$file asks for exact versions only", ({ dependencies, devDependencies }) => {
    const inexact = Object.entries({ ...dependencies, ...devDependencies }).filter(
      ([, version]) => !/^\d+\.\d+\.\d+$/.test(version),
    );
    expect(inexact).toEqual([]);
  });

  it("has at most 15 scripts", () => {
    expect(Object.keys(manifest("package.json").scripts ?? {}).length).toBeLessThanOrEqual(15);
  });

  it.each(["README.md", "DEVELOPERS.md"].filter((file) => existsSync(join(root, file))))(
    "%s names only scripts that exist",
    (file) => {
      const scripts = manifest("package.json").scripts ?? {};
      const named = [...text(file).matchAll(/\bnpm run ([\w:-]+)/g)].map((match) => match[1] ?? "");
      const unknown = named.filter((name) => !(name in scripts));
      expect(unknown).toEqual([]);
    },
  );
});

describe("the last line of a run", () => {
  it("counts passed and failed, and skipped only when there are some", () => {
    expect(tallyLine({ passed: 3, failed: 0, skipped: 0 })).toBe("3 passed, 0 failed");
    expect(tallyLine({ passed: 3, failed: 1, skipped: 2 })).toBe("3 passed, 1 failed, 2 skipped");
  });
});
