// Do findings that follow from cylinders that miss say so for every case?
import { KNOWLEDGE } from "../../packages/core/src/index.ts";
import { holds, offOne, offRange } from "../helper/rule.ts";

const CLASSES = ["none", "one", "two", "more", "random"];

holds({
  name: "afterMisfire has a row for every class; of a choice it covers all options and adds up to 1",
  why: "Whatever misses, the lamp, the trim or the smell is some way.",
  *check() {
    for (const { id, kind, options, afterMisfire } of KNOWLEDGE.findings.values()) {
      if (!afterMisfire) continue;
      for (const name of CLASSES) {
        const row = (afterMisfire as Readonly<Record<string, Record<string, number>>>)[name];
        const at = `${id}/${name}`;
        yield { at, breach: row ? undefined : "is missing" };
        if (!row) continue;
        for (const [option, chance] of Object.entries(row)) {
          const breach = option in options ? offRange(chance) : "is no option";
          yield { at: `${at}/${option}`, breach };
        }
        const open = Object.keys(options).filter((option) => !(option in row));
        if (kind === "choice") {
          yield { at, breach: open.length > 0 ? `lacks ${open}` : offOne(Object.values(row)) };
        }
      }
    }
  },
  exceptions: {},
});

holds({
  name: "where nothing misses, nothing follows from it",
  why: "Else a shake of the engine mount would explain a lean mixture.",
  *check() {
    for (const { id, kind, options, afterMisfire } of KNOWLEDGE.findings.values()) {
      if (!afterMisfire) continue;
      const raised = Object.entries(afterMisfire.none).filter(
        ([option, chance]) =>
          kind !== "choice" && chance > (options[option]?.chance ?? 0) && chance > 0,
      );
      yield { at: id, breach: raised.length > 0 ? `raises ${raised}` : undefined };
    }
  },
  exceptions: {},
});

holds({
  name: "a finding looks at the misfiring cylinders, or follows from them, never both",
  why: "Both would count one look twice.",
  *check() {
    for (const { id, byMisfire, afterMisfire } of KNOWLEDGE.findings.values()) {
      yield { at: id, breach: byMisfire && afterMisfire ? "does both" : undefined };
    }
  },
  exceptions: {},
});
