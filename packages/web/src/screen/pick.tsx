// Which engine: layout, ignition, firing order, one question at a time. What is known so far stands in
// the address (#/pick/6/v/rail, or #/engine/6/v/rail for the case that is open), so a reload loses
// nothing.
import { type EngineProfile, genericProfiles, type Layout, resolveEngine } from "@half-order/core";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { Block } from "../diagram/block.tsx";
import { Dial } from "../diagram/dial.tsx";
import { Ignition } from "../diagram/ignition.tsx";
import { IGNITION_GUESS, NOWHERE } from "../parts.ts";
import { CHANGE, chooseEngine } from "../state/begin.ts";
import { at, goTo, path } from "../state/route.ts";
import { sayGroups, sayOrder } from "../text/answer.ts";
import { PICK, QUESTION } from "../text/en.ts";
import { Heading } from "../ui/heading.tsx";
import { Later } from "../ui/later.tsx";
import { Lazy } from "../ui/lazy.tsx";
import { Dashed } from "../ui/option.tsx";

/** Stands in the address for a layout that is not known. */
const ANY = "any";

function Pick(): VNode {
  const [way = "", count = "", layout, ignition] = path.value;
  const fitting = genericProfiles(Number(count)).filter(
    (profile) =>
      (layout === undefined || layout === ANY || profile.layout === layout) &&
      (ignition === undefined || profile.ignition === ignition),
  );
  const [first] = fitting;
  if (!first) return <Lazy entry={NOWHERE} />;
  const known = { way, count, fitting };
  if (layout === undefined) return <LayoutQuestion {...known} />;
  if (ignition === undefined) return <IgnitionQuestion {...known} layout={layout} />;
  return <OrderQuestion {...known} layout={layout} ignition={first.ignition} />;
}

interface PickProps {
  /** First part of the address: for a new case, or for the one that is open. */
  readonly way: string;
  readonly count: string;
  readonly fitting: readonly EngineProfile[];
}

interface LaidOut extends PickProps {
  readonly layout: string;
}

/** The first profile of each kind, for its picture. */
function firstOf<K>(
  profiles: readonly EngineProfile[],
  kind: (profile: EngineProfile) => K,
): readonly (readonly [K, EngineProfile])[] {
  const found = new Map<K, EngineProfile>();
  for (const profile of profiles) if (!found.has(kind(profile))) found.set(kind(profile), profile);
  return [...found.entries()];
}

function LayoutQuestion({ way, count, fitting }: PickProps): VNode {
  const layouts = firstOf(fitting, ({ layout }) => layout as Layout);
  return (
    <section class="column">
      <Heading of="layout">{PICK.layout}</Heading>
      <div class="options">
        {layouts.map(([layout, profile]) => (
          <a key={layout} class="option has-picture" href={at(way, count, layout)}>
            <Thumb>
              <Block engine={resolveEngine(profile)} />
            </Thumb>
            <span class="words">{PICK.layouts[layout]}</span>
          </a>
        ))}
        <Dashed onClick={() => goTo(way, count, ANY)}>{PICK.unknownLayout}</Dashed>
      </div>
      <Back to={way === CHANGE ? at("answers") : at()} />
    </section>
  );
}

function IgnitionQuestion({ way, count, layout, fitting }: LaidOut): VNode {
  const [isStuck, setStuck] = useState(false);
  const kinds = firstOf(fitting, ({ ignition }) => ignition);
  return (
    <section class="column">
      <Heading of="ignition">{PICK.ignition}</Heading>
      <p class="help">{PICK.ignitionHelp}</p>
      <div class="options">
        {kinds.map(([kind]) => (
          <a key={kind} class="option has-picture" href={at(way, count, layout, kind)}>
            <Thumb>
              <Ignition kind={kind} />
            </Thumb>
            <span class="words">
              {PICK.kinds[kind][0]}
              <small>{PICK.kinds[kind][1]}</small>
            </span>
          </a>
        ))}
        {!isStuck && <Dashed onClick={() => setStuck(true)}>{PICK.unknownIgnition}</Dashed>}
      </div>
      {isStuck && <Lazy entry={IGNITION_GUESS} />}
      <Back to={at(way, count)} />
    </section>
  );
}

function OrderQuestion({
  way,
  count,
  layout,
  ignition,
  fitting,
}: LaidOut & Pick<EngineProfile, "ignition">): VNode {
  const unknown: EngineProfile = {
    cylinders: Number(count),
    ignition,
    ...(layout === ANY ? {} : { layout: layout as Layout }),
  };
  return (
    <section class="column">
      <Heading of="order">{PICK.order}</Heading>
      <p class="help">{PICK.orderHelp}</p>
      <div class="options">
        {fitting.map((profile) => (
          <OrderOption key={profile.id} profile={profile} />
        ))}
        <Dashed onClick={() => chooseEngine(unknown)}>{PICK.unknownOrder}</Dashed>
        <a class="option is-dashed" href={way === CHANGE ? at("sketch", CHANGE) : at("sketch")}>
          <span class="words">{PICK.otherOrder}</span>
        </a>
      </div>
      <Back to={at(way, count, layout)} />
    </section>
  );
}

function Back({ to }: { to: string }): VNode {
  return (
    <p>
      <a class="act-link" href={to}>
        {QUESTION.back}
      </a>
    </p>
  );
}

function OrderOption({ profile }: { profile: EngineProfile }): VNode {
  const engine = resolveEngine(profile);
  const { names, order, groups } = engine;
  const named = (list: readonly number[]): readonly (string | number)[] =>
    list.map((c) => names[c] ?? c);
  const pairs = profile.ignition === "distributor" ? "" : sayGroups(groups.map(named));
  const notes = [
    ...(profile.firingIntervals ? [PICK.uneven(profile.firingIntervals)] : []),
    ...(pairs ? [PICK.pairs(pairs)] : []),
  ];
  return (
    <button
      type="button"
      class="option has-picture"
      onClick={() => chooseEngine(profile.id ?? profile)}
    >
      <Thumb isDial>
        <Dial engine={engine} />
      </Thumb>
      <span class="words">
        {sayOrder(named(order))}
        <small>{notes.join("; ")}</small>
      </span>
    </button>
  );
}

/** Pictures are drawn one after the other, once the words can be read. */
function Thumb({ children, isDial }: { children: VNode; isDial?: boolean }): VNode {
  return (
    <span class={isDial ? "thumb is-dial" : "thumb"}>
      <Later>{children}</Later>
    </span>
  );
}

export { Pick as Screen };
