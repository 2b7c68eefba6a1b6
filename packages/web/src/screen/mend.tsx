// A repair from the first screw to the first start, and how it runs then.
import type { CylinderName, Mending, Problem, RepairResult } from "@half-order/core";
import type { VNode } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import type { Wanted } from "../state/advising.ts";
import { addRepair, asOneStep, repairs } from "../state/case.ts";
import { faultWords } from "../state/prose.ts";
import { goTo, path } from "../state/route.ts";
import { keyAt, keyOfStep, offInShort } from "../state/step.ts";
import { drawn, isDesk } from "../state/view.ts";
import { closeList, closeUp, offNow, spend, tickedOf } from "../state/work.ts";
import { LAZY, LEDGER, list } from "../text/en.ts";
import { MEND, STEP, sayMinutes } from "../text/en-mend.ts";
import { GROUNDS } from "../text/en-ranking.ts";
import { Cautions } from "../ui/caution.tsx";
import { chanceText } from "../ui/chance.tsx";
import { Heading } from "../ui/heading.tsx";
import { Dashed, Option } from "../ui/option.tsx";
import { useMending } from "../ui/repair-mending.ts";
import { Part, Plain } from "../ui/repair-part.tsx";
import { RepairResults } from "../ui/repair-result.tsx";
import { Ticks } from "../ui/repair-ticks.tsx";
import { Screen as Nowhere } from "./nowhere.tsx";
import "../style/mend.css";

function Mend(): VNode | null {
  const [, repair, at] = path.value;
  if (repair === undefined) return <Nowhere />;
  if (!drawn.value) return null;
  const cylinder = drawn.value.names.find((name) => String(name) === at) ?? at;
  const wanted = { repair, ...(cylinder === undefined ? {} : { cylinder }) };
  return <Repair key={path.value.join("/")} wanted={wanted} />;
}

function Repair({ wanted }: { wanted: Wanted }): VNode {
  const advice = useMending(wanted);
  if (advice?.problems) {
    const isKnown = advice.problems.every(({ code }) => code !== "repair-unknown");
    return isKnown ? <Impossible of={advice.problems} /> : <Nowhere />;
  }
  const mending = advice?.mending;
  return (
    <section class="column mend">
      <p class="facts">
        <strong>{STEP.repair}</strong>{" "}
        {mending && [...whereOf(mending), sayMinutes(mending.minutes)].join(" · ")}
      </p>
      <Heading of={`mend ${wanted.repair}`} level={isDesk.value ? 2 : 1} class="act">
        {mending?.name ?? LAZY.coming}
      </Heading>
      {mending && <Whole of={mending} wanted={wanted} />}
    </section>
  );
}

function Impossible({ of }: { of: readonly Problem[] }): VNode {
  return (
    <section class="column">
      <Heading of="impossible" level={isDesk.value ? 2 : 1}>
        {MEND.unknown}
      </Heading>
      <Plain of={of.map(({ message, hint }) => `${message} ${hint}`)} />
    </section>
  );
}

function whereOf({ cylinders }: Mending): readonly string[] {
  return cylinders.length > 0 ? [STEP.cylinders(cylinders.length, list(cylinders))] : [];
}

function Whole({ of, wanted }: { of: Mending; wanted: Wanted }): VNode {
  const key = keyAt(wanted.repair, wanted.cylinder === undefined ? [] : [wanted.cylinder]);
  return (
    <>
      <p>{MEND.cures(chanceText(of.cures))}</p>
      <Cautions ids={of.cautions} />
      <ComesOff of={of} />
      <For of={of} />
      <AlsoRight of={of} />
      <NotYet of={of} />
      <Ticks of={key} lines={of.putBack} told={of.cautions} />
      <Part title={MEND.how}>
        <p class="help">{MEND.rough}</p>
        <AskResult
          left={of.putBack.filter(({ id }) => !tickedOf(key).includes(id)).length}
          onResult={(result) => note(of, wanted, key, result)}
        />
      </Part>
      <p class="fine">{MEND.estimates}</p>
    </>
  );
}

/** What a check before had off is not to be taken off again; whether it is still off only the user knows. */
function ComesOff({ of: { opens } }: { of: Mending }): VNode {
  const ref = useRef<HTMLDivElement>(null);
  const isLeftOff = offNow.value.length > 0;
  return (
    <Part title={MEND.opens}>
      <div ref={ref} class="aside" tabIndex={-1}>
        {opens.length > 0 && (
          <Plain
            of={offInShort(opens).map(
              ({ say, ids, minutes }) =>
                `${STEP.off(say, ids.length)}, ${STEP.openMinutes(sayMinutes(minutes))}`,
            )}
          />
        )}
        {isLeftOff && (
          <p>
            {opens.length === 0 && MEND.opensNoMore} {MEND.leftOff}{" "}
            <button
              type="button"
              class="quiet"
              onClick={() => {
                closeUp();
                ref.current?.focus();
              }}
            >
              {STEP.allOn}
            </button>
          </p>
        )}
        {opens.length === 0 && !isLeftOff && <p>{MEND.opensNothing}</p>}
      </div>
    </Part>
  );
}

interface AskResultProps {
  /** Lines of the put-back list that are not ticked. */
  readonly left: number;
  readonly onResult: (result: RepairResult | undefined) => void;
}

/** An engine that runs right may still have something loose on it: asked about, not forbidden. */
function AskResult({ left, onResult }: AskResultProps): VNode {
  const [isAsking, setAsking] = useState(false);
  const asked = useRef<HTMLParagraphElement>(null);
  useEffect(() => {
    if (isAsking) asked.current?.focus();
  }, [isAsking]);
  const toList = (): void => {
    setAsking(false);
    document.querySelector<HTMLElement>(".ticks [aria-pressed=false]")?.focus();
  };
  if (isAsking && left > 0) {
    return (
      <div class="options">
        <p class="wrong" ref={asked} tabIndex={-1}>
          {MEND.stillOpen(left)}
        </p>
        <Option say={MEND.allOn} onClick={() => onResult("cured")} />
        <Dashed onClick={toList}>{MEND.toList}</Dashed>
      </div>
    );
  }
  return (
    <RepairResults
      onResult={(result) => {
        if (result === "cured" && left > 0) setAsking(true);
        else onResult(result);
      }}
    />
  );
}

/** What it is for, with the chance that the fault is there and that this mends it. */
function For({ of: { faults } }: { of: Mending }): VNode {
  // What mends a fault is told once, at whichever places it may be.
  const isNew = (i: number): boolean =>
    faults.findIndex(({ fault }) => fault === faults[i]?.fault) === i;
  return (
    <Part title={MEND.for}>
      {faults.length === 0 && <p>{MEND.forNothing}</p>}
      <dl>
        {faults.map(({ fault, place, name, probability, works }, i) => (
          <div key={`${fault}@${place}`} class="fact">
            <dt>
              {name} <b>{chanceText(probability)}</b>
            </dt>
            <dd class="help">
              {isNew(i) && faultWords(fault)?.mend} {MEND.works(chanceText(works))}
            </dd>
          </div>
        ))}
      </dl>
    </Part>
  );
}

function AlsoRight({ of: { alsoPutRight } }: { of: Mending }): VNode | null {
  if (alsoPutRight.length === 0) return null;
  return (
    <Part title={MEND.alsoRight}>
      <ul class="group">
        {alsoPutRight.map(({ finding, cylinder, say, grounds }) => (
          <li key={`${finding} ${cylinder} ${say}`}>
            {cylinder !== undefined && `${LEDGER.cylinder(String(cylinder))}: `}
            {say} <small class="grounds">{GROUNDS[grounds.basis]}</small>
          </li>
        ))}
      </ul>
    </Part>
  );
}

function NotYet({ of: { notYet } }: { of: Mending }): VNode | null {
  if (notYet.length === 0) return null;
  return (
    <Part title={MEND.notYet}>
      <p class="help">{MEND.notYetBody}</p>
      <Plain of={notYet.map(({ name, cures }) => `${name}: ${chanceText(cures)}`)} />
    </Part>
  );
}

/** Notes the repair with what came of it; then everything is back on, and the list is done with. */
function note(of: Mending, wanted: Wanted, key: string, result: RepairResult | undefined): void {
  asOneStep(() => {
    addRepair({
      repair: wanted.repair,
      ...(of.cylinders.length > 0 && wanted.cylinder !== undefined
        ? { cylinder: wanted.cylinder as CylinderName }
        : {}),
      ...(result === undefined ? {} : { result }),
    });
    const when = repairs.value.at(-1)?.when;
    if (when !== undefined) {
      spend({ step: `${keyOfStep(of)} ${when}`, minutes: of.minutes, shownBy: { when } });
    }
    closeList(key);
  });
  if (result === "cured") goTo("proof", String(repairs.value.length - 1));
  else goTo("ranking");
}

export { Mend as Screen };
