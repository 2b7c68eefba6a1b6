// Tests run on the sources of the packages, not on their builds.
import { defineConfig } from "vitest/config";
import { findChromium } from "./scripts/chromium.mjs";

export default defineConfig({
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  // Only this list counts for tests in Node, and it replaces the default one.
  ssr: {
    resolve: { conditions: ["half-order-source", "module", "node", "development|production"] },
  },
  test: {
    reporters: ["default", "./scripts/tally-reporter.mjs"],
    // Browser tests skip themselves when this is empty.
    env: { CHROMIUM_PATH: findChromium() },
    projects: [
      {
        extends: true,
        test: {
          name: "unit",
          include: ["tests/**/*.test.{ts,tsx}"],
          exclude: ["tests/browser/**"],
          testTimeout: 60_000,
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        test: {
          name: "browser",
          include: ["tests/browser/**/*.test.{ts,tsx}"],
          // One browser at a time: they share the machine and some take a port.
          fileParallelism: false,
          testTimeout: 240_000,
          hookTimeout: 120_000,
          // As long as the browser itself waits for anything.
          expect: { poll: { timeout: 30_000 } },
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
