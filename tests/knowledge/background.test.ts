// Do the answers to a choice add up when no fault speaks?
import { KNOWLEDGE } from "../../packages/core/src/index.ts";
import { holds, offOne } from "../helper/rule.ts";

holds({
  name: "the background of a choice adds up to 1",
  why: "One of the options is the answer, whatever is broken.",
  *check() {
    for (const { id, kind, options } of KNOWLEDGE.findings.values()) {
      if (kind !== "choice") continue;
      yield { at: id, breach: offOne(Object.values(options).map(({ chance }) => chance)) };
    }
  },
  exceptions: {},
});
