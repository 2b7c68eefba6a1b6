// The same engine and the same findings with its cylinders called otherwise.

import type { CylinderName, EngineProfile } from "../../packages/core/src/engine/profile.ts";
import { resolveEngine } from "../../packages/core/src/engine/resolve-engine.ts";
import type { Answer, Finding } from "../../packages/core/src/knowledge/answer.ts";

export type Names = (name: CylinderName) => CylinderName;

/** New names by old ones, which number from 1. */
export function namesBy(list: readonly CylinderName[]): Names {
  return (name) => list[Number(name) - 1] as CylinderName;
}

/** Everything that would follow from the numbers (banks, neighbours) is written down first. */
export function relabelledProfile(profile: EngineProfile, to: Names): EngineProfile {
  const engine = resolveEngine(profile);
  const named = (cylinders: readonly number[]): readonly CylinderName[] =>
    cylinders.map((c) => to(engine.names[c] as CylinderName));
  return {
    ...profile,
    firingOrder: named(engine.order),
    banks: engine.banks.map(named),
    neighbours: engine.neighbours.map((pair) => named(pair) as [CylinderName, CylinderName]),
    ...(profile.firingGroups ? { firingGroups: profile.firingGroups.map((g) => g.map(to)) } : {}),
    ...(profile.coilOn ? { coilOn: profile.coilOn.map(to) } : {}),
    connectors: engine.connectors.map(({ name, cylinders }) => ({ name, feeds: named(cylinders) })),
  };
}

export function relabelledFindings(findings: readonly Finding[], to: Names): readonly Finding[] {
  return findings.map((finding) => ({
    ...finding,
    answer: relabelledAnswer(finding, to),
    ...(finding.cylinder === undefined ? {} : { cylinder: to(finding.cylinder) }),
  }));
}

function relabelledAnswer({ finding, answer }: Finding, to: Names): Answer {
  if (finding === "codes") return (answer as readonly string[]).map((code) => otherCode(code, to));
  if (finding !== "counts") return answer;
  return Object.fromEntries(Object.entries(answer).map(([name, n]) => [String(to(name)), n]));
}

/** P0301 to P0312 name a cylinder that misfires, P0261 to P0296 its injector, three codes each. */
function otherCode(code: string, to: Names): string {
  const number = Number(code.slice(1));
  if (number >= 301 && number <= 312) return `P0${300 + Number(to(number - 300))}`;
  if (number >= 261 && number <= 296) {
    const cylinder = Math.floor((number - 261) / 3) + 1;
    return `P0${261 + 3 * (Number(to(cylinder)) - 1) + ((number - 261) % 3)}`;
  }
  return code;
}
