// Does every answer that can be given mean something to somebody?
import { KNOWLEDGE } from "../../packages/core/src/index.ts";
import type { FindingRow } from "../../packages/core/src/knowledge/schema.ts";
import { holds } from "../helper/rule.ts";

const named = new Map<string, Set<string>>();
for (const { signs, risks } of KNOWLEDGE.faults) {
  for (const { finding, gives } of signs) note(finding, Object.keys(gives));
  for (const { finding, times } of risks) note(finding, Object.keys(times));
}

/** Why an answer is asked that ranks nothing. */
const DANGER = "It decides about driving on, before anybody asks which fault it is.";

holds({
  name: "every option is spoken of by a fault, or follows from misfire, regimes, showing or time",
  why: "An answer that moves nothing wastes the time of the person who looked.",
  *check() {
    for (const row of KNOWLEDGE.findings.values()) {
      for (const option of Object.keys(row.options)) {
        const isUsed = isDerived(row, option) || named.get(row.id)?.has(option);
        yield { at: `${row.id}/${option}`, breach: isUsed ? undefined : "moves nothing" };
      }
    }
  },
  exceptions: {
    "alarm/fuel-seen": DANGER,
    "alarm/smoke-beneath": DANGER,
    "alarm/hot-gauge": DANGER,
    "alarm/oil-lamp": DANGER,
    "alarm/metal-noise": DANGER,
    "alarm/plug-out": DANGER,
    "alarm/thump": DANGER,
    "codes/fuel-cut": "Any hard misfire may set it; it tells no more than the misfire itself.",
  },
});

function note(finding: string, options: readonly string[]): void {
  const sofar = named.get(finding) ?? new Set<string>();
  for (const option of options) sofar.add(option);
  named.set(finding, sofar);
}

/** Of a choice, an option that nobody names still gains or loses as the rest of each row. */
function isDerived(
  { id, kind, byMisfire, byRegime, byShows, fades }: FindingRow,
  option: string,
): boolean {
  if (fades && option in fades.left) return true;
  if (byMisfire || byShows || (byRegime && option in byRegime)) return true;
  return kind === "choice" && (named.get(id)?.size ?? 0) > 0;
}
