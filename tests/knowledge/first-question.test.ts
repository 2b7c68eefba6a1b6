// Which six questions come first?
import { KNOWLEDGE } from "../../packages/core/src/index.ts";
import { holds } from "../helper/rule.ts";

holds({
  name: "the first questions are numbered 1 to 6",
  why: "The page asks exactly these before anything else; a gap or a doublet would lose one.",
  *check() {
    const numbers = [...KNOWLEDGE.findings.values()].flatMap(({ first }) => first ?? []);
    const got = numbers.sort((a, b) => a - b).join();
    yield { at: "first", breach: got === "1,2,3,4,5,6" ? undefined : `got ${got}` };
  },
  exceptions: {},
});

holds({
  name: "a first question is about the whole engine and asked for every ignition kind",
  why: "It is asked before anybody knows which cylinder is meant.",
  *check() {
    for (const { id, first, scope, suits } of KNOWLEDGE.findings.values()) {
      if (first === undefined) continue;
      yield { at: id, breach: scope === "engine" && !suits ? undefined : "is not" };
    }
  },
  exceptions: {},
});
