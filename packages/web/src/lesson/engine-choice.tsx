// Which engine is broken: that of the case, an invented one, or any by its kind.
import { allProfiles, type EngineProfile, IGNITION_KINDS } from "@half-order/core";
import type { VNode } from "preact";
import { profile as caseProfile } from "../state/case.ts";
import { drawn } from "../state/view.ts";
import { sayEngine, sayOrder } from "../text/answer.ts";
import { PICK } from "../text/en.ts";
import { LESSON } from "../text/en-lesson.ts";
import { engineId, lessonEngine, OF_CASE, takeEngine } from "./lesson.ts";
import { Select } from "./select.tsx";

const shelf = allProfiles();
const invented = shelf.filter(({ invented }) => invented);
const generic = shelf.filter(({ invented }) => !invented);
const counts = [...new Set(generic.map(({ cylinders }) => cylinders))].sort((a, b) => a - b);
const BY_KIND = "by-kind";

export function EngineChoice(): VNode {
  const profile = lessonEngine.value?.profile;
  const isGeneric = engineId.value !== OF_CASE && profile?.invented !== true;
  const own = caseProfile.value && drawn.value ? caseProfile.value : undefined;
  return (
    <>
      <Select
        label={LESSON.engine}
        value={isGeneric ? BY_KIND : engineId.value}
        onPick={(id) => takeEngine(id === BY_KIND ? like(profile) : id)}
      >
        {own && <option value={OF_CASE}>{LESSON.caseEngine(own.name ?? sayEngine(own))}</option>}
        {invented.map((each) => (
          <option key={each.id} value={each.id}>
            {`${each.name}: ${sayEngine(each)}`}
          </option>
        ))}
        <option value={BY_KIND}>{LESSON.byKind}</option>
      </Select>
      {isGeneric && profile && <ByKind profile={profile} />}
    </>
  );
}

/** Each list holds what there is to what stands above it. */
function ByKind({ profile }: { profile: EngineProfile }): VNode {
  const sameCount = generic.filter(({ cylinders }) => cylinders === profile.cylinders);
  const kinds = IGNITION_KINDS.filter((kind) =>
    sameCount.some(({ ignition }) => ignition === kind),
  );
  const orders = sameCount.filter(({ ignition }) => ignition === profile.ignition);
  return (
    <div class="lesson-kind">
      <Select
        label={LESSON.cylinders}
        value={String(profile.cylinders)}
        onPick={(count) => takeEngine(like({ ...profile, cylinders: Number(count) }))}
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
          if (ignition) takeEngine(like({ ...profile, ignition }));
        }}
      >
        {kinds.map((kind) => (
          <option key={kind} value={kind}>
            {PICK.kindNames[kind]}
          </option>
        ))}
      </Select>
      <Select label={LESSON.order} value={profile.id ?? ""} onPick={takeEngine}>
        {orders.map((each) => (
          <option key={each.id} value={each.id}>
            {sayOrderOf(each)}
          </option>
        ))}
      </Select>
    </div>
  );
}

/** The engine by kind that is most like another: number of cylinders, then ignition, layout and order. */
function like(wanted: EngineProfile | undefined): string {
  const alike = (each: EngineProfile): number =>
    8 * Number(each.cylinders === wanted?.cylinders) +
    4 * Number(each.ignition === wanted?.ignition) +
    2 * Number(each.layout === wanted?.layout) +
    Number(String(each.firingOrder) === String(wanted?.firingOrder));
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
