// Do the shares of all faults make up all complaints?
import { shareOf } from "../../packages/core/src/compile/prior.ts";
import { IGNITION_KINDS, KNOWLEDGE } from "../../packages/core/src/index.ts";
import { holds } from "../helper/rule.ts";

holds({
  name: "shares add up to about 1,000 of 1,000 complaints for each ignition kind",
  why: "They answer `which one is it`; a family that grows must take its share from the others.",
  *check() {
    for (const kind of IGNITION_KINDS) {
      const sum = [...KNOWLEDGE.faults, KNOWLEDGE.somethingElse].reduce(
        (total, fault) => total + shareOf(fault, kind),
        0,
      );
      yield { at: kind, breach: sum >= 950 && sum <= 1050 ? undefined : `adds up to ${sum}` };
    }
  },
  exceptions: {},
});
