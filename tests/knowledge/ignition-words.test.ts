// Do the words of checks and questions speak only of parts that the engine has?
import { CHECKS, type CheckRow, FINDINGS, type FindingRow } from "../../packages/core/src/index.ts";
import { holds } from "../helper/rule.ts";

type Kind = NonNullable<CheckRow["suits"]>[number];

const checks: readonly CheckRow[] = CHECKS;
const findings: readonly FindingRow[] = FINDINGS;
/** Kinds under which two cylinders share a coil, and so one has a companion there. */
const PAIRED: readonly Kind[] = ["pack", "rail", "hybrid"];

holds({
  name: "a companion is spoken of only where two cylinders share a coil",
  why: "Who has a coil on each plug looks for a second cylinder that is not there.",
  *check() {
    const breachOf = (suits: readonly Kind[] | undefined, words: readonly string[]) => {
      const isPaired = suits?.every((kind) => PAIRED.includes(kind)) ?? false;
      const isSaid = words.some((text) => /companion|another pair|different pairs/i.test(text));
      return isSaid && !isPaired ? "speaks of a companion where there may be none" : undefined;
    };
    for (const { id, name, steps, suits } of checks) {
      yield { at: id, breach: breachOf(suits, [name, ...steps]) };
    }
    for (const { id, ask, help = "", options, suits } of findings) {
      const words = Object.values(options).flatMap(({ say, more }) => [say, more ?? ""]);
      yield { at: id, breach: breachOf(suits, [ask, help, ...words]) };
    }
  },
  exceptions: {},
});
