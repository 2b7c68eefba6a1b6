// Is every cited work really used, so that the list is no decoration?
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { KNOWLEDGE } from "../../packages/core/src/index.ts";
import { CITED_WORKS } from "../../packages/core/src/knowledge/cited-work.ts";
import { holds } from "../helper/rule.ts";

const root = join(import.meta.dirname, "../..");
const source = join(root, "packages/core/src");
const texts = readdirSync(source, { recursive: true, encoding: "utf8" })
  .filter((file) => file.endsWith(".ts") && !file.endsWith("cited-work.ts"))
  .map((file) => join(source, file))
  .concat(join(root, "docs/how-it-reasons.md"))
  .map((file) => readFileSync(file, "utf8"));

const sources = new Set(
  [
    ...KNOWLEDGE.faults,
    ...KNOWLEDGE.findings.values(),
    ...KNOWLEDGE.checks,
    ...KNOWLEDGE.repairs,
    ...KNOWLEDGE.access,
  ].map(({ grounds }) => grounds.source),
);

holds({
  name: "every cited work is used",
  why: "A list of sources tells where numbers and methods come from, not what somebody has read.",
  *check() {
    for (const { id, cite } of CITED_WORKS) {
      const isUsed = sources.has(id) || texts.some((text) => text.includes(cite));
      const breach = isUsed ? undefined : `nothing is grounded on it and nobody writes "${cite}"`;
      yield { at: id, breach };
    }
  },
  exceptions: {},
});
