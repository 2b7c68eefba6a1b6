// Is the put-back list complete, in an order that hands can follow, and does it warn?
import { KNOWLEDGE, PUT_BACK } from "../../packages/core/src/index.ts";
import type { PutBackRow } from "../../packages/core/src/knowledge/schema.ts";
import { holds } from "../helper/rule.ts";

const rows: readonly PutBackRow[] = PUT_BACK;
const cautions = new Set(KNOWLEDGE.cautions.map(({ id }) => id));

holds({
  name: "a put-back step has an id and a place in the order that no other has",
  why: "Two steps at one place would change places from one day to the next.",
  *check() {
    const ids = new Set<string>();
    let last = 0;
    for (const { id, order } of rows) {
      yield { at: id, breach: order > last && !ids.has(id) ? undefined : "is out of order" };
      ids.add(id);
      last = order;
    }
  },
  exceptions: {},
});

holds({
  name: "a step with a figure can be said without it, and its cautions exist",
  why: "A blank where a torque belongs is worse than no list.",
  *check() {
    for (const { id, say, without, cautions: warned = [] } of rows) {
      const hasFigure = /\{/.test(say);
      const isSound = hasFigure === (without !== undefined) && !/\{/.test(without ?? "");
      yield {
        at: id,
        breach: isSound ? undefined : "has a figure and no words without, or the reverse",
      };
      const stray = say.replace(/\{(?:torque|gap)\}/g, "").match(/[{}]/);
      yield { at: `${id}/say`, breach: stray ? "holds an unknown figure" : undefined };
      for (const caution of warned) {
        yield { at: `${id}/${caution}`, breach: cautions.has(caution) ? undefined : "is unknown" };
      }
    }
  },
  exceptions: {},
});

/** Whoever does the first before the second does the work twice, or breaks something. */
const BEFORE: readonly (readonly [string, string])[] = [
  ["well.clean", "plug.by-hand"],
  ["plug.gap", "plug.by-hand"],
  ["plug.by-hand", "plug.torque"],
  ["plug.torque", "boot.home"],
  ["boot.spring", "boot.home"],
  ["boot.home", "coil.bolt"],
  ["coil.bolt", "connector.click"],
  ["connector.click", "connector.lock"],
  ["injector.seal", "fuel.leak-check"],
  ["tools.counted", "battery.back"],
  ["battery.back", "fuel.leak-check"],
  ["battery.back", "codes.clear"],
  ["belt.mark", "first-start"],
  ["fuel.leak-check", "first-start"],
  ["coolant.level", "first-start"],
  ["oil.level", "first-start"],
  ["codes.clear", "first-start"],
];

holds({
  name: "what must come first comes first",
  why: "A lock closed on a connector that is not home breaks, and comes off at the first bump.",
  *check() {
    const orderOf = (id: string): number => rows.find((row) => row.id === id)?.order ?? Number.NaN;
    for (const [first, then] of BEFORE) {
      const isSo = orderOf(first) < orderOf(then);
      yield { at: `${first} before ${then}`, breach: isSo ? undefined : "is the other way round" };
    }
  },
  exceptions: {},
});
