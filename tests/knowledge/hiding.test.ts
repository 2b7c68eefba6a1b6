// Do looks that are made cold or at idle, and the answers that take from them, fit together?
import { FINDINGS } from "../../packages/core/src/index.ts";
import { holds, offRange } from "../helper/rule.ts";

holds({
  name: "only an answer that excludes others leaves a part of the trouble, 0..1",
  why: "Whether a look could meet the fault is told by one answer of a choice; a list tells of many.",
  *check() {
    for (const { id, kind, options } of FINDINGS) {
      for (const [option, { leaves }] of Object.entries(options)) {
        if (!leaves) continue;
        const at = `${id}/${option}`;
        yield { at, breach: kind === "choice" ? undefined : `is of the kind ${kind}` };
        for (const left of Object.values(leaves)) yield { at, breach: offRange(left) };
      }
    }
  },
  exceptions: {},
});

holds({
  name: "something had to be provoked only where the look else waits for nothing",
  why: "On a look that is made whenever the trouble is there the mark would do nothing.",
  *check() {
    for (const { id, kind, made, options } of FINDINGS) {
      for (const [option, { provoked }] of Object.entries(options)) {
        if (!provoked) continue;
        const breach = made && kind === "choice" ? undefined : "its look is not made so";
        yield { at: `${id}/${option}`, breach };
      }
    }
  },
  exceptions: {},
});

holds({
  name: "a look at a standing engine is no answer about when the trouble is there",
  why: "It would take from itself.",
  *check() {
    for (const { id, made, options } of FINDINGS) {
      if (!made) continue;
      const says = Object.values(options).some(({ leaves }) => leaves);
      yield { at: id, breach: says ? "is both" : undefined };
    }
  },
  exceptions: {},
});
