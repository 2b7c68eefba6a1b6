// Is the put-back list complete, in an order that hands can follow, and does it warn?
import {
  allProfiles,
  IGNITION_KINDS,
  KNOWLEDGE,
  PUT_BACK,
  putBackAfter,
} from "../../packages/core/src/index.ts";
import type { CheckRow, PutBackRow, RepairRow } from "../../packages/core/src/knowledge/schema.ts";
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
  ["distributor.cap", "lead.order"],
  ["connector.lock", "fuel.back"],
  ["fuel.back", "battery.back"],
  ["fuel.back", "fuel.leak-check"],
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

type Step = CheckRow | RepairRow;

const steps: readonly Step[] = [...KNOWLEDGE.checks, ...KNOWLEDGE.repairs];

/** Every step of the put-back list that a row calls for on some engine. */
function putBackOf(row: Step): ReadonlySet<string> {
  const kinds = IGNITION_KINDS.filter((kind) => row.suits?.includes(kind) ?? true);
  const profiles = kinds.flatMap(
    (kind) => allProfiles().find((each) => each.ignition === kind) ?? [],
  );
  return new Set(profiles.flatMap((profile) => putBackAfter(profile, row).map(({ id }) => id)));
}

/** What the hand is told to do, and the steps of which one undoes it. */
const UNDONE: readonly (readonly [RegExp, readonly string[]])[] = [
  [/\bcut (the )?fuel\b/i, ["fuel.back"]],
  [/\bunplug\w* (the |one |its |suspect )*injector/i, ["fuel.back"]],
  [/\bunplug|\bplug connectors off/i, ["connector.click", "fuel.back"]],
  [/\bcoil unplugged/i, ["connector.click"]],
  [/\bbattery negative off/i, ["battery.back"]],
  [/\b(release|fit) the (fuel )?pressure/i, ["fuel.leak-check"]],
  [/\bdipstick|\boil cap|\boil filler|\bopen the tank|\bradiator, opened/i, ["cap.closed"]],
  [/\bplugs? out\b|\bplug comes out|\bunscrew each plug|\bexchange the plug\b/i, ["plug.torque"]],
  [/\b(lift|pull|take|put)\w* [\w ,]*\b(boot|cable|rail)s?\b[\w ]* off\b/i, ["boot.home"]],
  [/\bexchange the (two )?cable|\bcable off|\btake off one cable/i, ["boot.home"]],
  [/\btake the distributor cap off/i, ["distributor.cap"]],
  [/\bin place of the front oxygen sensor/i, ["sensor.seat"]],
  [/\bgauge behind the throttle|\bpinch one branch|\bclose the intake\b/i, ["intake.hose"]],
];

holds({
  name: "what a check is told to take off, unplug or cut is put back by its list",
  why: "An engine without its fuel relay does not start, and nobody remembers why.",
  *check() {
    for (const row of KNOWLEDGE.checks) {
      const listed = putBackOf(row);
      for (const say of [row.name, ...row.steps]) {
        if (/^never\b/i.test(say)) continue;
        for (const [told, undone] of UNDONE) {
          if (!told.test(say)) continue;
          const isListed = undone.some((id) => listed.has(id));
          yield { at: `${row.id}/${told}`, breach: isListed ? undefined : `no ${undone}` };
        }
      }
    }
  },
  exceptions: {},
});

/** A caution that tells to cut something first, and what undoes that. */
const CUT_BY_CAUTION: readonly (readonly [string, string])[] = [
  ["open-spark", "fuel.back"],
  ["fuel-pressure", "fuel.leak-check"],
];

holds({
  name: "what its cautions tell to cut or release is on the list of a check or repair",
  why: "Fuel that was cut before a spark test, and pressure that was let off, are as far away as a part.",
  *check() {
    for (const row of steps) {
      const listed = putBackOf(row);
      for (const [caution, undone] of CUT_BY_CAUTION) {
        if (!row.cautions.includes(caution)) continue;
        yield {
          at: `${row.id}/${caution}`,
          breach: listed.has(undone) ? undefined : `no ${undone}`,
        };
      }
    }
    // A check measures at the battery; a repair of its wiring takes a pole off.
    for (const row of KNOWLEDGE.repairs) {
      const cut = [
        ...(row.cautions.includes("battery") ? ["battery.back"] : []),
        ...(row.cautions.includes("fuel-pressure") ? ["fuel.back"] : []),
      ];
      const listed = putBackOf(row);
      for (const id of cut)
        yield { at: `${row.id}/${id}`, breach: listed.has(id) ? undefined : "is not" };
    }
  },
  exceptions: {},
});

holds({
  name: "what comes off before a hand gets at a part has steps that put it back, and no row repeats them",
  why: "What stands twice is changed once.",
  *check() {
    const opened = new Map(KNOWLEDGE.access.map((row) => [row.id, row]));
    for (const { id, putBack } of opened.values()) {
      yield { at: id, breach: putBack.length > 0 ? undefined : "has none" };
    }
    for (const { id, access = [], putBack = [], suits = IGNITION_KINDS } of steps) {
      for (const step of putBack) {
        const isSaid = suits.every((kind) =>
          access.some((open) => {
            const row = opened.get(open);
            return row?.putBack.includes(step) && (row.suits?.includes(kind) ?? true);
          }),
        );
        yield { at: `${id}/${step}`, breach: isSaid ? "is said twice" : undefined };
      }
    }
  },
  exceptions: {},
});
