// Does every reading fall into an option, and is what nobody can measure outside its range?
import { KNOWLEDGE } from "../../packages/core/src/index.ts";
import { holds } from "../helper/rule.ts";

holds({
  name: "a reading has ascending steps into its own options, and all of them within what is possible",
  why: "A number that falls into no option would be thrown away without a word.",
  *check() {
    for (const { id, options, reading } of KNOWLEDGE.findings.values()) {
      if (!reading) continue;
      const {
        steps,
        figure,
        possible: [lowest, highest],
      } = reading;
      const unders = steps.map(({ under }) => under);
      const limits = unders.slice(0, -1) as readonly number[];
      const isSorted = limits.every((limit, i) => i === 0 || limit > (limits[i - 1] as number));
      const isOpen = unders.at(-1) === undefined && !limits.includes(undefined as never);
      yield { at: `${id}/steps`, breach: isSorted && isOpen ? undefined : "leave a gap" };
      const stray = steps.filter(({ option }) => !(option in options));
      yield { at: `${id}/options`, breach: stray.length > 0 ? "names no option" : undefined };
      const isInside = figure !== undefined || limits.every((l) => l > lowest && l < highest);
      yield { at: `${id}/possible`, breach: lowest < highest && isInside ? undefined : "is off" };
    }
  },
  exceptions: {},
});
