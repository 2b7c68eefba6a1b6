// Which answers are not for every engine, and which tell that a misfire travelled?
import { FINDINGS, IGNITION_KINDS } from "../../packages/core/src/index.ts";
import { PROVEN_BY_SWAP } from "../../packages/core/src/knowledge/made-by-check.ts";
import { holds } from "../helper/rule.ts";

holds({
  name: "an option suits ignition kinds of its finding only, not all of them, and stands in a list",
  why: "Options of a choice share out one whole: with one less they would not add up.",
  *check() {
    for (const { id, kind, options, suits: all = IGNITION_KINDS } of FINDINGS) {
      for (const [option, { suits }] of Object.entries(options)) {
        if (!suits) continue;
        const isPart = suits.length > 0 && suits.length < all.length;
        const isSound = isPart && suits.every((each) => all.includes(each)) && kind === "several";
        yield { at: `${id}/${option}`, breach: isSound ? undefined : "is not" };
      }
    }
  },
  exceptions: {},
});

holds({
  name: "an exchange of two like parts names the option by which the misfire travelled",
  why: "Two exchanges are held against one another by it.",
  *check() {
    for (const { id, kind, options, travels } of FINDINGS) {
      if (!id.startsWith("swap.") && travels === undefined) continue;
      const isSound = travels !== undefined && kind === "choice" && travels in options;
      yield { at: id, breach: isSound ? undefined : "does not" };
    }
  },
  exceptions: {
    "swap.rail": "a part known to be good comes from elsewhere: the misfire has nowhere to go",
  },
});

holds({
  name: "where an exchange proves a part, it does so by the misfire that travelled",
  why: "One answer must not mean two things.",
  *check() {
    for (const { finding, option } of PROVEN_BY_SWAP) {
      const travels = FINDINGS.find(({ id }) => id === finding)?.travels;
      yield { at: finding, breach: travels === option ? undefined : `${travels}, not ${option}` };
    }
  },
  exceptions: {
    "swap.rail": "it proves the part by the cure",
  },
});
