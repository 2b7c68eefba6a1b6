// Do the shares of all faults make up all complaints?
import { shareOf } from "../../packages/core/src/compile/prior.ts";
import { IGNITION_KINDS, KNOWLEDGE, suitsEngine } from "../../packages/core/src/index.ts";
import { builds } from "../helper/build.ts";
import { holds } from "../helper/rule.ts";

holds({
  name: "shares add up to about 1,000 of 1,000 complaints for each ignition kind and build",
  why: "They answer `which one is it`; a family that grows must take its share from the others.",
  *check() {
    const faults = [...KNOWLEDGE.faults, KNOWLEDGE.somethingElse];
    for (const profile of IGNITION_KINDS.flatMap(builds)) {
      const sum = faults
        .filter((fault) => suitsEngine(profile, fault))
        .reduce((total, fault) => total + shareOf(fault, profile.ignition), 0);
      const at = [profile.ignition, profile.switching, profile.fuelling].filter(Boolean).join(" ");
      yield { at, breach: sum >= 950 && sum <= 1050 ? undefined : `adds up to ${sum}` };
    }
  },
  exceptions: {},
});
