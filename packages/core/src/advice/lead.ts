// Who would lead the ranking by then? A part with all the ways in which it may have failed, and the parts like it,
// as the page's ranking has it.
import { componentKey, partCylinders } from "../compile/compile.ts";
import { type Instance, instanceKey } from "../compile/prior.ts";
import { nameAt } from "../engine/cylinder-name.ts";
import type { Engine } from "../engine/engine.ts";
import type { CylinderName } from "../engine/profile.ts";
import { isAlikePart, WAY_TELLING } from "../explain/alike.ts";
import { SOMETHING_ELSE } from "../knowledge/something-else.ts";
import type { CheckOutcome } from "./advice.ts";
import { type Present, type Prospect, presentIn } from "./outlook.ts";

/** The likeliest part when the states have these chances; `undefined` where nothing of the catalogue is left. */
export function leadIn(prospect: Prospect, chance: Float64Array): CheckOutcome["leader"] {
  const parts = likeliest(prospect, chance, (instance, engine) => componentKey(engine, instance));
  const [first] = parts;
  if (!first) return undefined;
  const component = componentKey(first.engine, first.instance);
  const ways = likeliest(prospect, chance, instanceKey).filter(
    ({ instance, engine }) => componentKey(engine, instance) === component,
  );
  const [likely = first, second] = ways;
  const alike = parts.filter((each) => isAlikePart(partOf(first), partOf(each)));
  const isOneWay = alike.length === 1 && (second?.probability ?? 0) <= WAY_TELLING;
  const { fault, place } = likely.instance;
  return {
    component,
    fault: fault.id,
    place: place.id,
    name: isOneWay ? wayName(likely) : partName(alike),
    probability: first.probability,
  };
}

function likeliest(
  prospect: Prospect,
  chance: Float64Array,
  keyOf: (instance: Instance, engine: Engine) => string,
): readonly Present[] {
  return [...presentIn(prospect, chance, keyOf).values()]
    .filter(({ instance }) => instance.fault.id !== SOMETHING_ELSE.id)
    .sort((a, b) => b.probability - a.probability);
}

function partOf({ instance: { fault, place }, engine, probability }: Present) {
  const cylinders = partCylinders(engine, fault, place.cylinders);
  return { part: fault.part.name, cylinders, probability };
}

function wayName({ instance: { fault, place }, engine }: Present): string {
  return nameAt(fault.name, namesAt(engine, place.cylinders), engine.names.length);
}

/** "Spark plug of 2", "Coil of 2+5 or 3+4", "Fuel pump", "Every spark plug alike". */
function partName(alike: readonly Present[]): string {
  const [first] = alike as [Present];
  const { part, cylinders } = partOf(first);
  if (first.instance.place.kind === "set") return `Every ${part} alike`;
  const name = `${part.charAt(0).toUpperCase()}${part.slice(1)} of {at}`;
  const { engine } = first;
  if (alike.length === 1) return nameAt(name, namesAt(engine, cylinders), engine.names.length);
  const places = alike
    .map((each) => partOf(each).cylinders)
    .sort(([a = 0], [b = 0]) => a - b)
    .map((at) => namesAt(engine, at).join("+"));
  return name.replace("{at}", `${places.slice(0, -1).join(", ")} or ${places.at(-1)}`);
}

function namesAt({ names }: Engine, cylinders: readonly number[]): readonly CylinderName[] {
  return cylinders.map((c) => names[c] as CylinderName);
}
