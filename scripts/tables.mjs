// Writes docs/knowledge.md from the built tables.
//   npm run build && npm run tables
//   --check  write nothing; end with 1 when the page and the tables differ
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = join(dirname(fileURLToPath(import.meta.url)), "..");
const page = join(root, "docs/knowledge.md");
const built = join(root, "packages/core/dist/explain/knowledge-page.js");

if (!existsSync(built)) {
  console.error("The tables are not built yet: run npm run build first.");
  process.exit(1);
}
const { knowledgePage } = await import("../packages/core/dist/explain/knowledge-page.js");
const { KNOWLEDGE } = await import("../packages/core/dist/knowledge/knowledge.js");

const text = knowledgePage(KNOWLEDGE);
const isCurrent = existsSync(page) && readFileSync(page, "utf8") === text;
if (process.argv.includes("--check")) {
  if (!isCurrent) console.error("docs/knowledge.md is not what the tables say: npm run tables.");
  process.exitCode = isCurrent ? 0 : 1;
} else {
  if (!isCurrent) writeFileSync(page, text);
  console.log(`docs/knowledge.md ${isCurrent ? "is up to date" : "written"}.`);
}
