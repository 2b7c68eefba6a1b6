// Can every fault, finding and check come up on some engine?
import { instancesOf } from "../../packages/core/src/compile/prior.ts";
import {
  allProfiles,
  IGNITION_KINDS,
  KNOWLEDGE,
  resolveEngine,
} from "../../packages/core/src/index.ts";
import { holds } from "../helper/rule.ts";

const engines = allProfiles().map(resolveEngine);
const present = new Set(
  engines.flatMap((engine) => instancesOf(engine, KNOWLEDGE).map(({ fault }) => fault.id)),
);

holds({
  name: "every fault can sit somewhere on one of the known engines",
  why: "A row that no engine can have is never ranked, and nobody notices.",
  *check() {
    for (const { id } of KNOWLEDGE.faults) {
      yield { at: id, breach: present.has(id) ? undefined : "has no share or no place anywhere" };
    }
  },
  exceptions: {},
});

holds({
  name: "every check answers a finding, and suits an ignition kind of each finding it answers",
  why: "A check without an outcome tells nothing.",
  *check() {
    for (const { id, yields, suits = IGNITION_KINDS } of KNOWLEDGE.checks) {
      yield { at: id, breach: yields.length > 0 ? undefined : "answers nothing" };
      for (const finding of yields) {
        const kinds = KNOWLEDGE.findings.get(finding)?.suits ?? IGNITION_KINDS;
        const isAsked = kinds.some((kind) => suits.includes(kind));
        yield { at: `${id}/${finding}`, breach: isAsked ? undefined : "never both" };
      }
    }
  },
  exceptions: {},
});
