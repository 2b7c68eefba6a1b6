// Can findings speak for or against every fault?
import { KNOWLEDGE } from "../../packages/core/src/index.ts";
import { holds } from "../helper/rule.ts";

holds({
  name: "every fault has at least three signs or risks",
  why: "With fewer, findings can hardly tell it from its neighbours in the list.",
  *check() {
    for (const { id, signs, risks } of KNOWLEDGE.faults) {
      const count = signs.length + risks.length;
      yield { at: id, breach: count >= 3 ? undefined : `has ${count}` };
    }
  },
  exceptions: {},
});
