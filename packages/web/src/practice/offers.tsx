// What can be checked or mended, in groups or found by a word; a tap opens one, with its cautions above what
// does it.
import type { CylinderName } from "@half-order/core";
import type { PracticeOffer } from "@half-order/core/instrument";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { stepsOf } from "../state/prose.ts";
import { CHECK } from "../text/en-check.ts";
import { STEP } from "../text/en-mend.ts";
import { PRACTICE, sayCost } from "../text/en-practice.ts";
import { Cautions } from "../ui/caution.tsx";
import { Ordered } from "../ui/repair-part.tsx";
import { SearchField } from "../ui/search-field.tsx";

type Kind = "check" | "repair";

interface OffersProps {
  readonly kind: Kind;
  readonly offers: readonly PracticeOffer[];
  /** With the cylinder that names the place, where there is more than one. */
  readonly onTake: (id: string, cylinder: CylinderName | undefined) => void;
}

export function Offers({ kind, offers, onTake }: OffersProps): VNode {
  const [typed, setTyped] = useState("");
  const wanted = typed.trim().toLowerCase();
  const found = offers.filter(({ name }) => name.toLowerCase().includes(wanted));
  const items = (of: readonly PracticeOffer[]): VNode => (
    <ul class="links">
      {of.map((offer) => (
        <Item key={offer.id} kind={kind} offer={offer} onTake={onTake} />
      ))}
    </ul>
  );
  return (
    <>
      <SearchField
        label={PRACTICE.find[kind]}
        typed={typed}
        onType={setTyped}
        says={wanted === "" ? "" : PRACTICE.found(found.length)}
      />
      {wanted !== "" && items(found)}
      {wanted === "" &&
        groupsOf(kind, offers).map(({ say, own }) => (
          <details key={say} class="topic">
            <summary>{say}</summary>
            {items(own)}
          </details>
        ))}
    </>
  );
}

interface Group {
  readonly say: string;
  readonly own: readonly PracticeOffer[];
}

/** Checks by their tool; repairs as the catalogue has them, from the plugs to the rest of the engine. */
function groupsOf(kind: Kind, offers: readonly PracticeOffer[]): readonly Group[] {
  if (kind === "repair") return [{ say: PRACTICE.allRepairs(offers.length), own: offers }];
  return [...new Set(offers.map(({ tool }) => tool))].map((tool) => {
    const own = offers.filter((offer) => offer.tool === tool);
    return { say: PRACTICE.group(CHECK.tools[tool] ?? tool, own.length), own };
  });
}

interface ItemProps {
  readonly kind: Kind;
  readonly offer: PracticeOffer;
  readonly onTake: OffersProps["onTake"];
}

function Item({ kind, offer, onTake }: ItemProps): VNode {
  const [isOpen, setOpen] = useState(false);
  const { name, places } = offer;
  return (
    <li>
      <button type="button" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
        {name}
        <small>{sayTimes(places.map(({ minutes }) => minutes))}</small>
      </button>
      {isOpen && <Open kind={kind} offer={offer} onTake={onTake} />}
    </li>
  );
}

/** "12 minutes", or "12 minutes to 20 minutes" where some of it is off already at one place and not at another. */
function sayTimes(minutes: readonly number[]): string {
  const [least, most] = [Math.min(...minutes), Math.max(...minutes)];
  return least === most ? sayCost(most) : PRACTICE.range(sayCost(least), sayCost(most));
}

function Open({ kind, offer, onTake }: ItemProps): VNode {
  const { id, name, places, cautions, mustRest } = offer;
  const opens = [...new Set(places.flatMap((place) => place.opens))];
  const steps = kind === "check" ? stepsOf(id) : [];
  const isOne = places.length === 1;
  const isShared = kind === "check" && places.some(({ cylinders }) => cylinders.length > 1);
  return (
    <div class="practice-open">
      {mustRest && <p class="wrong">{STEP.running["stop-now"]}</p>}
      <Cautions ids={cautions} />
      {opens.length > 0 && <p>{PRACTICE.opens(opens.join(", "))}</p>}
      {steps.length > 0 && (
        <details>
          <summary>{PRACTICE.how}</summary>
          <Ordered of={steps} />
        </details>
      )}
      {isOne ? (
        <button type="button" class="option is-finish" onClick={() => onTake(id, undefined)}>
          {PRACTICE.act[kind]}
          <span class="vh">: {name}</span>
        </button>
      ) : (
        <fieldset class="targets">
          <legend>
            {PRACTICE.actAt[kind]} {isShared && PRACTICE.together}
          </legend>
          {places.map(({ cylinders }) => (
            <button
              key={cylinders.join()}
              type="button"
              class="target"
              onClick={() => onTake(id, cylinders[0])}
            >
              {cylinders.join("+")}
              <span class="vh">: {name}</span>
            </button>
          ))}
        </fieldset>
      )}
    </div>
  );
}
