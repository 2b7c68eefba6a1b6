// The hand's next move as the planner sees it: the check that pays, the repair that is likely enough, or a call.
import { type NextRepair, type NextStep, turnsEngine } from "@half-order/core";
import type { VNode } from "preact";
import { useEffect } from "preact/hooks";
import {
  adviceTrouble,
  followPlan,
  isPlanning,
  plan,
  putOff,
  putOffStep,
} from "../state/advice.ts";
import { atHand, findings, repairs } from "../state/case.ts";
import { checkRow } from "../state/catalogue.ts";
import { drive } from "../state/drive.ts";
import { inUnits } from "../state/figure.ts";
import { seemsMended } from "../state/mended.ts";
import { stepsOf } from "../state/prose.ts";
import { at, goTo } from "../state/route.ts";
import {
  atAllPlaces,
  checkAddress,
  keyOfStep,
  offered,
  putOffKey,
  spentMinutes,
  wantedOf,
} from "../state/step.ts";
import { isDesk } from "../state/view.ts";
import { driveAddress } from "../state/way.ts";
import { work } from "../state/work.ts";
import { RANKING } from "../text/en.ts";
import { MEND, PROOF, REPAIRS, STEP, sayMinutes } from "../text/en-mend.ts";
import { chanceText } from "./chance.tsx";
import { Heading, Under } from "./heading.tsx";
import { Dashed } from "./option.tsx";
import { useProven } from "./proof-so-far.ts";
import { Ordered } from "./repair-part.tsx";
import { ShutOut } from "./shut-out.tsx";
import { StepCautions } from "./step-caution.tsx";
import { StepCheck, StepFacts, sayPlace } from "./step-check.tsx";
import { OtherSteps } from "./step-others.tsx";
import "../style/mend.css";

/** The step of the open case; on a phone in short, with the way to its own screen. */
function NextStepCard(): VNode | null {
  useEffect(followPlan, []);
  if (adviceTrouble.value) {
    return (
      <p role="alert">
        {STEP.broke} {adviceTrouble.value}
      </p>
    );
  }
  const now = plan.value;
  return (
    <section class={isPlanning.value ? "next is-planning" : "next"} aria-label={STEP.next}>
      {isDesk.value && (
        <Heading
          of="next"
          title={seemsMended(repairs.value) ? RANKING.was : RANKING.title}
          level={2}
          class="minor"
        >
          {STEP.next}
        </Heading>
      )}
      <p class="weighing" role="status">
        {isPlanning.value ? STEP.planning : ""}
      </p>
      {now && <StopFirst />}
      {now && <Step step={offered(now, putOff.value)} />}
      {now && !seemsMended(repairs.value) && <Costs />}
      {now && <More />}
    </section>
  );
}

/** Before any step: what says to stop now. */
function StopFirst(): VNode | null {
  const rules = (drive.value?.rules ?? []).filter(({ level }) => level === "stop-now");
  if (rules.length === 0) return null;
  return (
    <div class="caution">
      <p>
        <strong>{STEP.stopFirst}</strong>{" "}
        {rules.map(({ reason }) => inUnits.value(reason)).join(" ")}
      </p>
      <a class="act-link" href={driveAddress()}>
        {STEP.stopMore}
      </a>
    </div>
  );
}

function Step({ step }: { step: NextStep }): VNode {
  const key = keyOfStep(step);
  switch (step.kind) {
    case "call":
      return <Call />;
    case "repair":
      return isToProve(step) ? <Prove step={step} /> : <Repair step={step} />;
    case "check":
      if (isDesk.value) return <StepCheck key={key} id={step.check} cylinders={step.cylinders} />;
      return (
        <>
          <StepFacts step={step} label={STEP.next} />
          <h2 class="act">{step.name}</h2>
          <StepCautions of={checkRow(step.check)} />
          {/* Paper cannot be tapped to see how it is done. */}
          <div class="print-only">
            <Ordered of={stepsOf(step.check)} />
          </div>
          <a class="option is-finish" href={at(...checkAddress(step.check, step.cylinders))}>
            {STEP.how}
          </a>
        </>
      );
  }
}

function Repair({ step }: { step: NextRepair }): VNode {
  const hasPrices = atHand.value?.partsPrice !== undefined && step.partsPrice > 0;
  return (
    <>
      <p class="facts">
        <strong>{isDesk.value ? STEP.repair : STEP.next}</strong> {sayMinutes(step.minutes)}
        {hasPrices && ` · ${STEP.price(String(Math.round(step.partsPrice)))}`}
      </p>
      <Name>{step.name}</Name>
      <p>{MEND.cures(chanceText(step.cures))}</p>
      {step.because && <p>{step.because}</p>}
      <a class="option is-finish" href={at("mend", ...wantedOf(step))}>
        {STEP.mend}
      </a>
      <Dashed
        onClick={() => {
          putOffStep(putOffKey(step));
          // On a phone the next one stands where the thumb is; a desk's heading takes the focus.
          if (isDesk.value) goTo("ranking");
        }}
      >
        {STEP.notNow}
      </Dashed>
    </>
  );
}

function isToProve({ isMade }: NextRepair): boolean {
  return isMade === true && seemsMended(repairs.value);
}

/** It runs right since it was mended: what is left is to drive, and to say how that went. */
function Prove({ step }: { step: NextRepair }): VNode {
  const proven = useProven();
  return (
    <>
      {!isDesk.value && (
        <p class="facts">
          <strong>{STEP.next}</strong>
        </p>
      )}
      <Name>{proven ? PROOF.close : step.name}</Name>
      {proven && <p>{PROOF.lead(proven, proven)}</p>}
      {!proven && step.because && <p>{step.because}</p>}
      <a class="option is-finish" href={at("proof")}>
        {proven ? STEP.proven : STEP.prove}
      </a>
    </>
  );
}

/** On a desk it stands under a heading of its own. */
function Name({ children }: { children: string }): VNode {
  return (
    <Under level={isDesk.value ? 2 : 1} class="act">
      {children}
    </Under>
  );
}

function Call(): VNode {
  return (
    <>
      {!isDesk.value && (
        <p class="facts">
          <strong>{STEP.next}</strong>
        </p>
      )}
      <Name>{STEP.call}</Name>
      <Looks />
      <ShutOut />
      <a class="option is-finish" href={at("hand-over")}>
        {STEP.callLink}
      </a>
    </>
  );
}

/** Looks told of where nothing pays and looking still helps; fewer beside the traffic. */
const LOOKS = { roadside: 3, elsewhere: 5 };

function Looks(): VNode {
  const isRoadside = atHand.value?.where === "roadside";
  const level = drive.value?.level?.level;
  const mustRest = level === "stop-now" || level === "do-not-drive";
  // Where it may burn or break, nobody leans over it.
  const looks = atAllPlaces(level === "stop-now" ? [] : (plan.value?.checks ?? []))
    .filter((check) => !mustRest || !turnsEngine(check))
    .sort((a, b) => b.tellsBits - a.tellsBits)
    .slice(0, isRoadside ? LOOKS.roadside : LOOKS.elsewhere);
  const say = looks.length > 0 ? STEP.callHere : STEP.callHereOnly;
  return (
    <>
      <p>{isRoadside ? say : STEP.callBody}</p>
      {!isRoadside && looks.length > 0 && <p>{STEP.callLooks}</p>}
      {looks.length > 0 && (
        <ul class="links">
          {looks.map((check) => (
            <li key={keyOfStep(check)}>
              <a href={at(...checkAddress(check.check, check.cylinders))}>
                {check.name}
                <small>{[...sayPlace(check), sayMinutes(check.minutes)].join(", ")}</small>
              </a>
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

/** What it has cost, and what is still to come. */
function Costs(): VNode | null {
  const now = plan.value;
  if (!now) return null;
  const spent = spentMinutes(work.value.spent, findings.value, repairs.value);
  // Nobody mends an engine at the roadside: hours to come would tell nothing there.
  const isHere = atHand.value?.where === "roadside";
  const expected = now.step.kind === "call" ? STEP.expectedCall : STEP.expected;
  const saves = !isHere && now.expectedMinutesWithoutChecks - now.expectedMinutes >= WORTH_TELLING;
  return (
    <p class="fine">
      {spent > 0 && `${STEP.spent(sayMinutes(spent))} `}
      {isHere ? STEP.here : expected(sayMinutes(now.expectedMinutes))}{" "}
      {saves && `${STEP.without(sayMinutes(now.expectedMinutesWithoutChecks))} `}
      {!isHere &&
        now.callChance >= CALL_TELLING &&
        `${STEP.endsInCall(chanceText(now.callChance))} `}
      {STEP.costs}
    </p>
  );
}

/** Minutes that one plan must be better than another before it is said. */
const WORTH_TELLING = 5;

/** From this chance on it is said that a professional may have to finish it. */
const CALL_TELLING = 0.1;

function More(): VNode {
  return (
    <>
      {isDesk.value && !seemsMended(repairs.value) ? (
        <OtherSteps depth={2} />
      ) : (
        <a class="act-link" href={at("checks")}>
          {STEP.others}
        </a>
      )}
      <a class="act-link" href={at("hand")}>
        {atHand.value ? STEP.handOther : STEP.hand}
      </a>
      {repairs.value.length > 0 && (
        <a class="act-link" href={at("repairs")}>
          {REPAIRS.title} ({repairs.value.length})
        </a>
      )}
    </>
  );
}

export { NextStepCard as Screen };
