// Is every fault mended by something that fits, and does every repair mend what it can reach?

import { instancesOf, shareOf } from "../../packages/core/src/compile/prior.ts";
import { cureOf } from "../../packages/core/src/compile/repair.ts";
import { places } from "../../packages/core/src/engine/place.ts";
import {
  allProfiles,
  type FaultRow,
  IGNITION_KINDS,
  KNOWLEDGE,
  resolveEngine,
} from "../../packages/core/src/index.ts";
import type { RepairRow } from "../../packages/core/src/knowledge/schema.ts";
import { holds, type Looked } from "../helper/rule.ts";

const engines = allProfiles().map(resolveEngine);

function repairsOf(fault: FaultRow): readonly RepairRow[] {
  return KNOWLEDGE.repairs.filter(({ mends }) => mends.some((mend) => mend.fault === fault.id));
}

function worksOf(repair: RepairRow, fault: FaultRow): number {
  return repair.mends.find((mend) => mend.fault === fault.id)?.works ?? 0;
}

holds({
  name: "every fault is mended by a repair that fits each ignition kind, and one that mostly works",
  why: "A fault that nothing mends is a diagnosis without an end.",
  *check() {
    for (const fault of KNOWLEDGE.faults) {
      for (const kind of IGNITION_KINDS) {
        if (shareOf(fault, kind) === 0) continue;
        const best = Math.max(
          0,
          ...repairsOf(fault)
            .filter(({ suits }) => !suits || suits.includes(kind))
            .map((repair) => worksOf(repair, fault)),
        );
        yield { at: `${fault.id}/${kind}`, breach: best >= 0.5 ? undefined : `best is ${best}` };
      }
    }
  },
  exceptions: {},
});

holds({
  name: "every repair mends a fault, none surely",
  why: "A new part may be bad or sit badly; a repair that mends nothing is a purchase.",
  *check() {
    for (const { id, mends } of KNOWLEDGE.repairs) {
      yield { at: id, breach: mends.length > 0 ? undefined : "mends nothing" };
      const seen = new Set(mends.map(({ fault }) => fault));
      yield { at: `${id}/mends`, breach: seen.size === mends.length ? undefined : "twice" };
      for (const { fault, works } of mends) {
        const isOne = works > 0 && works <= 0.97;
        yield { at: `${id}/mends/${fault}`, breach: isOne ? undefined : `works ${works}` };
      }
    }
  },
  exceptions: {},
});

holds({
  name: "what a repair mends it reaches, at its place on some engine",
  why: "Done at one cylinder it mends nothing that sits at all of them.",
  *check(): Generator<Looked> {
    for (const repair of KNOWLEDGE.repairs) {
      for (const { fault } of repair.mends) {
        const isReached = engines
          .filter(({ ignition }) => !repair.suits || repair.suits.includes(ignition))
          .some((engine) =>
            instancesOf(engine, KNOWLEDGE)
              .filter((instance) => instance.fault.id === fault)
              .some((instance) =>
                places(engine, repair.at).some((at) => cureOf(repair, at, instance) > 0),
              ),
          );
        yield { at: `${repair.id}/${fault}`, breach: isReached ? undefined : "is out of reach" };
      }
    }
  },
  exceptions: {},
});

holds({
  name: "a repair says what it takes: minutes, skill, a caution where the hand is about to go",
  why: "Parts under a bonnet are hot, live, or both.",
  *check() {
    for (const { id, minutes, skill, cautions, parts } of KNOWLEDGE.repairs) {
      yield { at: `${id}/minutes`, breach: minutes > 0 ? undefined : "takes no time" };
      const isSkill = Number.isInteger(skill) && skill >= 0 && skill <= 4;
      yield { at: `${id}/skill`, breach: isSkill ? undefined : `${skill} is not in 0..4` };
      yield { at: `${id}/cautions`, breach: cautions.length > 0 ? undefined : "warns of nothing" };
      const isPrice = ["none", "small", "medium", "large"].includes(parts);
      yield { at: `${id}/parts`, breach: isPrice ? undefined : `${parts} is no price` };
    }
  },
  exceptions: {},
});

holds({
  name: "what must come off is in the way on a kind that the step is for, and every access is used",
  why: "An access that never applies is paid for by nobody.",
  *check() {
    const steps = [...KNOWLEDGE.checks, ...KNOWLEDGE.repairs];
    for (const { id, suits: kinds = IGNITION_KINDS } of KNOWLEDGE.access) {
      const users = steps.filter(({ access }) => access?.includes(id));
      const isUsed = users.some(({ suits = IGNITION_KINDS }) =>
        suits.some((kind) => kinds.includes(kind)),
      );
      yield { at: id, breach: isUsed ? undefined : "is in nobody's way" };
    }
  },
  exceptions: {},
});

holds({
  name: "a repair that opens something closes it: what came off is in its put-back list",
  why: "A boot, a plug or a hose left loose is the next fault.",
  *check() {
    const closes: Readonly<Record<string, string>> = {
      "access.rail": "connector.click",
      "access.cable": "boot.home",
      "access.coil": "connector.click",
      "access.plug": "plug.torque",
      "access.fuel-rail": "fuel.leak-check",
      "access.intake": "intake.hose",
      "access.control-unit": "battery.back",
      "access.timing-cover": "belt.mark",
    };
    const opened = new Map(KNOWLEDGE.access.map((row) => [row.id, row.putBack]));
    for (const { id, access = [], suits } of KNOWLEDGE.repairs) {
      for (const open of access) {
        const putBack = opened.get(open) ?? [];
        const close = closes[open];
        if (close === undefined) continue;
        yield { at: `${id}/${open}`, breach: putBack.includes(close) ? undefined : `no ${close}` };
      }
      yield { at: `${id}/suits`, breach: suits?.length === 0 ? "suits nothing" : undefined };
    }
  },
  exceptions: {},
});
