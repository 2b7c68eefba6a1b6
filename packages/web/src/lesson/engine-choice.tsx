// Which engine is broken: that of the case, an invented one, or any by its kind.
import { allProfiles, type EngineProfile, IGNITION_KINDS } from "@half-order/core";
import type { VNode } from "preact";
import { sayEngine, sayOrder } from "../text/answer.ts";
import { PICK } from "../text/en.ts";
import { LESSON } from "../text/en-lesson.ts";
import { Select } from "./select.tsx";
import "../style/engine-choice.css";

const shelf = allProfiles();
const invented = shelf.filter(({ invented }) => invented);
const generic = shelf.filter(({ invented }) => !invented);
const counts = [...new Set(generic.map(({ cylinders }) => cylinders))].sort((a, b) => a - b);
const BY_KIND = "by-kind";

interface EngineChoiceProps {
  /** The engine that is chosen now. */
  readonly profile: EngineProfile;
  /** An engine beside those of the shelf, with what stands for it and what it is called. */
  readonly own?: { readonly value: string; readonly say: string; readonly isChosen: boolean };
  readonly onPick: (id: string) => void;
}

export function EngineChoice({ profile, own, onPick }: EngineChoiceProps): VNode {
  const isGeneric = !own?.isChosen && profile.invented !== true;
  const chosen = own?.isChosen ? own.value : (profile.id ?? "");
  return (
    <>
      <Select
        label={LESSON.engine}
        value={isGeneric ? BY_KIND : chosen}
        onPick={(id) => onPick(id === BY_KIND ? like(profile) : id)}
      >
        {own && <option value={own.value}>{own.say}</option>}
        {invented.map((each) => (
          <option key={each.id} value={each.id}>
            {`${each.name}: ${sayShort(each)}`}
          </option>
        ))}
        <option value={BY_KIND}>{LESSON.byKind}</option>
      </Select>
      {isGeneric && <ByKind profile={profile} onPick={onPick} />}
    </>
  );
}

/** Each list holds what there is to what stands above it. */
function ByKind({ profile, onPick }: Pick<EngineChoiceProps, "profile" | "onPick">): VNode {
  const sameCount = generic.filter(({ cylinders }) => cylinders === profile.cylinders);
  const kinds = IGNITION_KINDS.filter((kind) =>
    sameCount.some(({ ignition }) => ignition === kind),
  );
  const orders = sameCount.filter(({ ignition }) => ignition === profile.ignition);
  return (
    <div class="engine-kind">
      <Select
        label={LESSON.cylinders}
        value={String(profile.cylinders)}
        onPick={(count) => onPick(like({ ...profile, cylinders: Number(count) }))}
      >
        {counts.map((count) => (
          <option key={count} value={String(count)}>
            {count}
          </option>
        ))}
      </Select>
      <Select
        label={LESSON.ignition}
        value={profile.ignition}
        onPick={(kind) => {
          const ignition = kinds.find((each) => each === kind);
          if (ignition) onPick(like({ ...profile, ignition }));
        }}
      >
        {kinds.map((kind) => (
          <option key={kind} value={kind}>
            {PICK.kindNames[kind]}
          </option>
        ))}
      </Select>
      <Select label={LESSON.order} value={profile.id ?? ""} onPick={onPick}>
        {orders.map((each) => (
          <option key={each.id} value={each.id}>
            {sayOrderOf(each)}
          </option>
        ))}
      </Select>
    </div>
  );
}

/** Without its order, which the dial shows: a closed list has room for so much. */
function sayShort({ firingOrder: _, ...profile }: EngineProfile): string {
  return sayEngine(profile);
}

/** The engine by kind that is most like another: number of cylinders, then ignition, layout and order. */
function like(wanted: EngineProfile): string {
  const alike = (each: EngineProfile): number =>
    8 * Number(each.cylinders === wanted.cylinders) +
    4 * Number(each.ignition === wanted.ignition) +
    2 * Number(each.layout === wanted.layout) +
    Number(String(each.firingOrder) === String(wanted.firingOrder));
  const [best] = [...generic].sort((a, b) => alike(b) - alike(a));
  return best?.id ?? "";
}

function sayOrderOf({
  layout,
  cylinders,
  firingOrder = [],
  firingIntervals,
}: EngineProfile): string {
  const name = layout ? `${PICK.layoutNames[layout](cylinders)}, ` : "";
  const uneven = firingIntervals ? `, ${PICK.uneven([...new Set(firingIntervals)])}` : "";
  return `${name}${sayOrder(firingOrder)}${uneven}`;
}
