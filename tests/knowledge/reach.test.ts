// Does a fault make exactly one set of cylinders miss, one way or another?
import { KNOWLEDGE } from "../../packages/core/src/index.ts";
import { holds, offOne } from "../helper/rule.ts";

holds({
  name: "the reach of a fault adds up to 1",
  why: "Its ways to reach cylinders are all there are; `none` is one of them.",
  *check() {
    for (const { id, reach } of [...KNOWLEDGE.faults, KNOWLEDGE.somethingElse]) {
      yield { at: id, breach: offOne(Object.values(reach)) };
    }
  },
  exceptions: {},
});
