// Does a fault's row about a choice leave room for the options it does not name?
import { KNOWLEDGE } from "../../packages/core/src/index.ts";
import { holds } from "../helper/rule.ts";

/** What is left is for answers that nobody thought of, and for mistakes. */
const MOST = 0.98;

holds({
  name: "a choice row that leaves options open adds up to 0.98 at most, a full one to 1",
  why: "What is stated leaves the rest to the other options; with nothing left these become impossible.",
  *check() {
    for (const fault of KNOWLEDGE.faults) {
      for (const { finding, gives } of fault.signs) {
        const row = KNOWLEDGE.findings.get(finding);
        if (row?.kind !== "choice") continue;
        const sum = Object.values(gives).reduce<number>(
          (total, chance) => total + (chance ?? 0),
          0,
        );
        const isFull = Object.keys(row.options).every((option) => option in gives);
        yield {
          at: `${fault.id}/signs/${finding}`,
          breach: isFull ? offFull(sum) : offOpen(sum),
        };
      }
    }
  },
  exceptions: {},
});

function offOpen(sum: number): string | undefined {
  return sum <= MOST + 1e-9 ? undefined : `adds up to ${sum.toFixed(3)}`;
}

function offFull(sum: number): string | undefined {
  return Math.abs(sum - 1) < 1e-9
    ? undefined
    : `names every option but adds up to ${sum.toFixed(3)}`;
}
