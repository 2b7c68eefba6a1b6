// Builds the page into packages/web/dist. No preset: preact's JSX and the library's sources are all it needs.
import { defineConfig } from "vite";

export default defineConfig({
  root: import.meta.dirname,
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  resolve: {
    // Setting this replaces vite's own list, so that list is repeated after ours.
    conditions: ["half-order-source", "module", "browser", "development|production"],
  },
  build: {
    outDir: "dist",
    emptyOutDir: true,
    target: "es2022",
    // The page's security policy allows no inline script and no data: address but for images.
    modulePreload: { polyfill: false },
    assetsInlineLimit: 0,
  },
});
