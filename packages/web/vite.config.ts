// Builds the page into packages/web/dist. No preset: preact's JSX and the library's sources are all it needs.
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { minify } from "terser";
import {
  defineConfig,
  type IndexHtmlTransformContext,
  type Plugin,
  runnerImport,
  type UserConfig,
} from "vite";

// Setting this replaces vite's own list, so that list is repeated after ours.
const conditions = ["half-order-source", "module", "browser", "development|production"];
const packed = join(import.meta.dirname, "../../.cache/packed");
const source = (path: string): string => join(import.meta.dirname, "src", path);

const JSX = { jsx: { runtime: "automatic", importSource: "preact" } } as const;

export default defineConfig(async ({ command }): Promise<UserConfig> => {
  if (command === "build") await pack();
  return {
    root: import.meta.dirname,
    // Relative, so that the page can lie in any folder of any static host.
    base: "./",
    oxc: JSX,
    resolve: { conditions, alias: command === "build" ? STAND_INS : [] },
    plugins: [firstScreen(), smaller()],
    build: {
      outDir: "dist",
      emptyOutDir: true,
      target: "es2022",
      assetsInlineLimit: 0,
      rolldownOptions: { output: { codeSplitting: { groups: GROUPS } } },
      modulePreload: {
        // The page's security policy allows no script in the document but its own, and data: for images alone.
        polyfill: false,
        // The thread has no document to put hints into. Of screens only styles are named, which nothing else
        // would fetch: what their scripts import is found in them, and a list of it all is long.
        resolveDependencies: (file, deps) => {
          return /thread/.test(file) ? [] : deps.filter((dep) => dep.endsWith(".css"));
        },
      },
    },
  };
});

/**
 * Few files instead of many small ones, each with all that it needs and those before it have not: what page
 * and thread share, what the first screens need, what a case needs. Every other screen is a file of its
 * own, fetched when it is first shown.
 */
const GROUPS = [
  { name: "load", test: /web\/src\/packed\/preload\.ts$/, priority: 5 },
  {
    name: "engine",
    test: /core\/src\/(?:(?:engine|units)\/(?!random|convert)|knowledge\/(?:answer|caution|code|schema|suits)\.ts)/,
    priority: 4,
  },
  { name: "page", test: /web\/src\/(?:page|screen\/pick)\.tsx$/, priority: 3 },
  {
    name: "asked",
    test: /web\/src\/(?:packed\/(?:asked|check|fetched|finding)|state\/(?:asked|code|look))\.ts$/,
    priority: 4,
  },
  {
    name: "weigh",
    test: /core\/src\/(?:compile\/|inference\/(?!state|sensitivity|shake)|explain\/(?:rank|mixture)\.ts|service\/(?:drive|missing-cylinder)\.ts|knowledge\/drive-level\.ts)/,
    priority: 2,
  },
  {
    name: "drive-answer",
    test: /web\/src\/(?:ui\/drive-(?:answer|sign)\.tsx|state\/(?:drive|mended)\.ts)$/,
    priority: 1,
  },
  { name: "case", test: /web\/src\/screen\/(?:case|question)\.tsx$/, priority: 1 },
];

/** The tables travel as data, packed small (see `src/packed/pack.ts`), and not as script. */
const STAND_INS = [
  { find: /^.*\/knowledge\/knowledge\.ts$/, replacement: source("packed/knowledge.ts") },
  { find: /^.*\/knowledge\/finding\.ts$/, replacement: source("packed/finding.ts") },
  { find: /^.*\/knowledge\/drive-rule\.ts$/, replacement: source("packed/drive-rule.ts") },
  { find: /^.*\/knowledge\/limp-home\.ts$/, replacement: source("packed/limp-home.ts") },
  { find: /^.*\/knowledge\/repair\.ts$/, replacement: source("packed/repair.ts") },
  { find: /^.*\/knowledge\/check\.ts$/, replacement: source("packed/check.ts") },
  { find: /^.*\/check-shape\.ts$/, replacement: source("packed/check-shape.ts") },
  { find: /^\.\/page-words\.ts$/, replacement: source("packed/page-words.ts") },
  { find: /^\.\/thread-tables\.ts$/, replacement: source("packed/thread-tables.ts") },
  { find: /^\0vite\/preload-helper\.js$/, replacement: source("packed/preload.ts") },
  { find: /^#packed\//, replacement: `${packed}/` },
];

/** First screen and first styles stand in the document itself: they are read while the scripts are on their way. */
function firstScreen(): Plugin {
  return {
    name: "first-screen",
    apply: "build",
    transformIndexHtml: {
      order: "post",
      async handler(html, { bundle = {} }) {
        const { firstScreenHtml, lostHtml } = await load<Screen>("first-screen.tsx");
        const withStyles = html.replace(STYLE_LINK, (link, name: string) => {
          const file = bundle[name];
          if (file?.type !== "asset") return link;
          delete bundle[name];
          return `<style>${String(file.source)}</style>`;
        });
        return withStyles
          .replace("</head>", (tag) => pageFiles(bundle).map(preloadLink).join("") + tag)
          .replace('<div id="app">', (tag) => lostHtml() + tag + firstScreenHtml());
      },
    },
  };
}

type Bundle = NonNullable<IndexHtmlTransformContext["bundle"]>;
type Screen = typeof import("./first-screen.tsx");
const STYLE_LINK = /<link rel="stylesheet"[^>]* href="\.\/([^"]+)">/;

/** What the first script fetches next, and what that needs: asked for beside it, and not one after the other. */
function pageFiles(bundle: Bundle): readonly string[] {
  const chunks = Object.values(bundle).filter((file) => file.type === "chunk");
  const found = chunks.filter(({ facadeModuleId }) => facadeModuleId?.endsWith("/src/page.tsx"));
  for (const { imports } of found) {
    found.push(
      ...chunks.filter((each) => imports.includes(each.fileName) && !found.includes(each)),
    );
  }
  const data = Object.keys(bundle).filter(
    (name) => name.startsWith("assets/asked-") && name.endsWith(".json"),
  );
  return [...found.filter(({ isEntry }) => !isEntry).map(({ fileName }) => fileName), ...data];
}

/** Low: what stands in the document is read first. */
function preloadLink(name: string): string {
  const kind = name.endsWith(".js") ? 'rel="modulepreload"' : 'rel="preload" as="fetch"';
  return `<link ${kind} fetchpriority="low" crossorigin href="./${name}">`;
}

/** Goes once more over the scripts that vite has made small already: a sixtieth less to fetch. */
function smaller(): Plugin {
  return {
    name: "smaller",
    apply: "build",
    enforce: "post",
    async generateBundle(_, bundle) {
      for (const file of Object.values(bundle)) {
        if (file.type !== "chunk") continue;
        const { code } = await minify(file.code, { module: true, compress: { passes: 3 } });
        if (code) file.code = code;
      }
    },
  };
}

/** Writes the files that the stand-ins fetch, from the tables as they are now. */
async function pack(): Promise<void> {
  const { packedFiles } = await load<typeof import("./packing.ts")>("packing.ts");
  mkdirSync(packed, { recursive: true });
  for (const [name, content] of Object.entries(packedFiles())) {
    writeFileSync(join(packed, name), JSON.stringify(content));
  }
}

/** Runs a file of this folder while the page is built, as it stands in the sources. */
async function load<Module>(name: string): Promise<Module> {
  const { module } = await runnerImport<Module>(join(import.meta.dirname, name), {
    oxc: JSX,
    resolve: { conditions, noExternal: true },
    logLevel: "error",
  });
  return module;
}
