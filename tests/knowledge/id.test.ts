// Can every row be told from every other, and its name be read aloud?
import { KNOWLEDGE } from "../../packages/core/src/index.ts";
import { holds, type Looked } from "../helper/rule.ts";

const DOTTED = /^[a-z]+(?:-[a-z]+)*(?:\.[a-z]+(?:-[a-z]+)*)*$/;
const OPTION = /^[a-z0-9]+(?:-[a-z0-9]+)*$/;

holds({
  name: "ids are lower-case words joined by dashes and dots",
  why: "They stand in saved cases and in links: they are typed by hand and read aloud.",
  *check() {
    for (const { id } of rows()) yield { at: id, breach: DOTTED.test(id) ? undefined : "is not" };
    for (const { id, options } of KNOWLEDGE.findings.values()) {
      for (const option of Object.keys(options)) {
        yield { at: `${id}/${option}`, breach: OPTION.test(option) ? undefined : "is not" };
      }
    }
  },
  exceptions: {},
});

holds({
  name: "an id has a family where its table is divided into families",
  why: "plug.gap-worn says at once where to look; a bare word does not.",
  *check() {
    for (const { id } of [
      ...KNOWLEDGE.faults,
      ...KNOWLEDGE.checks,
      ...KNOWLEDGE.repairs,
      ...KNOWLEDGE.access,
    ]) {
      yield { at: id, breach: id.includes(".") ? undefined : "has no dot" };
    }
  },
  exceptions: {},
});

holds({
  name: "no two rows share an id, whatever their table",
  why: "A saved case, a link or a sentence must mean one thing.",
  *check(): Generator<Looked> {
    const seen = new Set<string>();
    for (const { id } of rows()) {
      yield { at: id, breach: seen.has(id) ? "is there twice" : undefined };
      seen.add(id);
    }
  },
  exceptions: {},
});

function rows(): readonly { readonly id: string }[] {
  const { faults, somethingElse, findings, checks, repairs, access } = KNOWLEDGE;
  return [...faults, somethingElse, ...findings.values(), ...checks, ...repairs, ...access];
}
