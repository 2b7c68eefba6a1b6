// One fault of the ranking, and what there is to say of it.
import type { RankedFault } from "@half-order/core";
import type { VNode } from "preact";
import { Glyph } from "../diagram/glyph.tsx";
import { checkRow } from "../state/catalogue.ts";
import { at } from "../state/route.ts";
import { drawn, isChosen, isDesk, keyOf, pick, picked, placesOf, pointed } from "../state/view.ts";
import { LEDGER, RANKING } from "../text/en.ts";
import { Bar, Chance } from "./chance.tsx";
import { Because } from "./ledger.tsx";

interface RankedRowProps {
  readonly of: RankedFault;
  readonly isLeader: boolean;
}

export function RankedRow({ of, isLeader }: RankedRowProps): VNode {
  const engine = drawn.value;
  const key = keyOf(of);
  const places = engine ? placesOf(of, engine) : [of.place];
  const isCurrent = picked.value !== undefined && keyOf(picked.value) === key;
  const isOpen = isCurrent && (isDesk.value || isChosen.value);
  const isPointed = pointed.value !== undefined && places.includes(pointed.value);
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
        onClick={() => pick(isOpen && !isDesk.value ? undefined : key)}
      >
        {engine && <Glyph engine={engine} place={places[0] ?? of.place} cylinders={of.cylinders} />}
        <span>{of.name}</span>
      </button>
      <Chance of={of.probability} />
      <Bar of={of.probability} isLeader={isLeader} />
      {isOpen && !isDesk.value && <FaultDetail of={of} />}
    </li>
  );
}

/** What the fault is, why it stands here, what looks at it and what mends it. */
export function FaultDetail({ of }: { of: RankedFault }): VNode {
  const check = checkRow(of.firstCheck);
  return (
    <section class="detail" aria-label={LEDGER.title(of.name)}>
      {isDesk.value && <h2>{of.name}</h2>}
      <p>{of.about}</p>
      <dl class="facts-of">
        {check && (
          <div class="fact">
            <dt>{RANKING.look}</dt>
            <dd>
              <a href={at("check", check.id)}>{check.name}</a>
            </dd>
          </div>
        )}
        <div class="fact">
          <dt>{RANKING.mend}</dt>
          <dd>{of.mend}</dd>
        </div>
      </dl>
      <Because fault={of.fault} place={of.place} probability={of.probability} />
    </section>
  );
}
