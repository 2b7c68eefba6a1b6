// Do findings that see only which cylinders miss answer for every case?
import { KNOWLEDGE } from "../../packages/core/src/index.ts";
import { holds, offOne } from "../helper/rule.ts";

const OF_ENGINE = ["none", "one", "two", "more", "random"];
const OF_CYLINDER = ["hit", "spared", "random"];

holds({
  name: "byMisfire has a row for every class of misfire, and each covers all options and adds up to 1",
  why: "Some cylinders miss, or none: one of the classes is the case, and one of the options the answer.",
  *check() {
    for (const { id, scope, options, byMisfire } of KNOWLEDGE.findings.values()) {
      if (!byMisfire) continue;
      const classes = scope === "engine" ? OF_ENGINE : OF_CYLINDER;
      const rows = Object.entries(byMisfire) as [string, Readonly<Record<string, number>>][];
      const missing = classes.filter((name) => !rows.some(([row]) => row === name));
      yield { at: id, breach: missing.length > 0 ? `lacks ${missing.join(", ")}` : undefined };
      for (const [name, row] of rows) {
        const open = Object.keys(options).filter((option) => !(option in row));
        const breach = open.length > 0 ? `lacks ${open.join(", ")}` : offOne(Object.values(row));
        yield { at: `${id}/byMisfire/${name}`, breach };
      }
    }
  },
  exceptions: {},
});
