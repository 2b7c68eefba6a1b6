// One part of the ranking, and the ways in which it may have failed.
import type { RankedFault } from "@half-order/core";
import type { VNode } from "preact";
import { FAULT_DETAIL } from "../screens.ts";
import type { PartGroup } from "../state/group.ts";
import { drawn, isChosen, isDesk, keyOf, pick, picked, placesOf, pointed } from "../state/view.ts";
import { sayGroup } from "../text/answer.ts";
import { RANKING } from "../text/en.ts";
import { Bar, Chance } from "./chance.tsx";
import { Lazy } from "./lazy.tsx";
import { Sign } from "./sign.tsx";

interface RankedRowProps {
  readonly of: PartGroup;
  readonly isLeader: boolean;
  /** False while the list is just coming up. */
  readonly hasSign: boolean;
}

export function RankedRow({ of, isLeader, hasSign }: RankedRowProps): VNode | null {
  const engine = drawn.value;
  const [first] = of.faults;
  if (!first) return null;
  const places = engine ? placesOf(first, engine) : [first.place];
  const current = of.faults.find((fault) => picked.value && keyOf(picked.value) === keyOf(fault));
  const isOpen = current !== undefined && (isDesk.value || isChosen.value);
  const isPointed = pointed.value !== undefined && places.includes(pointed.value);
  const hasMany = of.faults.length > 1;
  const state = isPointed ? "ranked-row is-pointed" : "ranked-row";
  return (
    <li
      class={isOpen ? `${state} is-open` : state}
      onPointerEnter={(event) => {
        if (event.pointerType === "mouse") pointed.value = places[0];
      }}
      onPointerLeave={() => {
        pointed.value = undefined;
      }}
    >
      <button
        type="button"
        class="name-of"
        aria-expanded={isOpen}
        onClick={() => pick(isOpen && isChosen.value ? undefined : keyOf(first))}
      >
        {engine && (
          <Sign
            isDrawn={hasSign}
            engine={engine}
            place={places[0] ?? first.place}
            cylinders={first.cylinders}
          />
        )}
        <span>
          {sayGroup(of)}
          {hasMany && <small>{RANKING.likeliest(first.name, of.faults.length - 1)}</small>}
        </span>
      </button>
      <Chance of={of.probability} name={sayGroup(of)} isEach={of.places.length > 1} />
      <Bar of={of.probability} isLeader={isLeader} />
      {isOpen && isChosen.value && hasMany && <Ways of={of} current={current} />}
      {isOpen && !isDesk.value && <Lazy entry={FAULT_DETAIL} />}
    </li>
  );
}

interface WaysProps {
  readonly of: PartGroup;
  readonly current: RankedFault;
}

/** The ways in which the part may have failed, to pick one. */
function Ways({ of, current }: WaysProps): VNode {
  return (
    <ul class="ways">
      <li>
        <small>{RANKING.ways}</small>
      </li>
      {of.faults.map((fault) => (
        <li key={keyOf(fault)}>
          <button type="button" aria-pressed={fault === current} onClick={() => pick(keyOf(fault))}>
            {fault.name}
          </button>
          <Chance of={fault.probability} name={fault.name} />
        </li>
      ))}
    </ul>
  );
}
