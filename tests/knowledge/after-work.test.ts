// Does a fault begin right after work oftener than the work that brings it about is told of it?
import { KNOWLEDGE } from "../../packages/core/src/index.ts";
import { holds } from "../helper/rule.ts";

holds({
  name: "a fault begins after work as often as work is done that can bring it about, and by chance",
  why: "The onset does not say what was done: else new plugs would speak for an intake gasket.",
  *check() {
    const byChance = KNOWLEDGE.findings.get("onset")?.options["after-work"]?.chance ?? 0;
    const work = KNOWLEDGE.findings.get("work")?.options ?? {};
    for (const fault of KNOWLEDGE.faults) {
      const onset = fault.signs.find(({ finding }) => finding === "onset");
      const times = fault.risks.find(({ finding }) => finding === "work")?.times ?? {};
      const after = onset?.gives["after-work"] ?? 0;
      const none = Object.entries(times).reduce((product, [option, factor = 1]) => {
        const told = factor > 1 ? factor * (work[option]?.chance ?? 0) : 0;
        return product * (1 - Math.min(1, told));
      }, 1);
      const most = 1 - none + byChance;
      const isMore = after > most + 1e-9;
      const told = (1 - none).toFixed(2);
      yield {
        at: fault.id,
        breach: isMore ? `begins so in ${after}, and its work is told in ${told}` : undefined,
      };
    }
  },
  exceptions: {},
});
