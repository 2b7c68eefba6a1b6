// Where does the current of a double coil go? Through both plugs in series, drawn and in words, for either of
// its cylinders about to fire.
import type { Engine } from "@half-order/core";
import type { PairFiring, PairLeg, Place, WatchedRegime } from "@half-order/core/physics";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { LESSON } from "../text/en-lesson.ts";
import { SPARK } from "../text/en-lesson-spark.ts";
import {
  arrowPath,
  CIRCUIT,
  HEAD,
  HEAD_WAY,
  LEG_X,
  leakPath,
  legPath,
  sparkPath,
  WINDING,
} from "./circuit-geometry.ts";
import { namesOf } from "./spot.ts";
import { firstTurn } from "./turn.ts";
import { hundredth } from "./words.ts";

interface CircuitProps {
  readonly engine: Engine;
  readonly now: WatchedRegime;
  /** Where it is broken. */
  readonly place: Place;
}

/** Opens on the cylinder at which it is broken; where that is no single one, on the one that misses most. */
export function Circuit({ engine, now, place }: CircuitProps): VNode {
  const [turn, setTurn] = useState<number | undefined>(undefined);
  const firing = now.pair[turn ?? firstTurn(now, place)];
  return (
    <section class="lesson-part">
      <h2>{SPARK.circuit}</h2>
      {!firing && <p>{SPARK.noPair}</p>}
      {firing && (
        <>
          <p class="help">{SPARK.circuitLead}</p>
          <p>{LESSON.inRegime(LESSON.regimes[now.regime])}</p>
          <fieldset class="targets">
            <legend class="vh">{SPARK.circuit}</legend>
            {now.pair.map(({ legs }, i) => (
              <button
                key={legs[0].cylinder}
                type="button"
                class="target"
                aria-pressed={now.pair[i] === firing}
                onClick={() => setTurn(i)}
              >
                {SPARK.toFire(nameOf(engine, legs[0]))}
              </button>
            ))}
          </fieldset>
          <Drawing engine={engine} firing={firing} />
          <InWords engine={engine} firing={firing} />
        </>
      )}
    </section>
  );
}

interface FiringProps {
  readonly engine: Engine;
  readonly firing: PairFiring;
}

/** The legs keep their sides whichever is to fire. */
function Drawing({ engine, firing }: FiringProps): VNode {
  const sides = [...firing.legs].sort((a, b) => Number(a.isReversed) - Number(b.isReversed));
  const flows = isFlowing(firing);
  return (
    <svg
      class="lesson-circuit"
      viewBox={`0 0 ${CIRCUIT.width} ${CIRCUIT.height}`}
      aria-hidden="true"
    >
      <rect class="head" {...HEAD} />
      <g class={flows ? "way is-flowing" : "way"}>
        <path class="winding" d={WINDING} />
        <path d={HEAD_WAY} />
        {sides.map((leg, i) => (
          <path key={leg.cylinder} d={legPath(sideOf(i), isBroken(leg))} />
        ))}
      </g>
      <text x={CIRCUIT.width / 2} y={14}>
        {SPARK.winding}
      </text>
      <text x={CIRCUIT.width / 2} y={CIRCUIT.head + 16}>
        {SPARK.head}
      </text>
      {!flows && (
        <text x={CIRCUIT.width / 2} y={70}>
          {SPARK.noCurrent}
        </text>
      )}
      {sides.map((leg, i) => (
        <LegMarks key={leg.cylinder} engine={engine} leg={leg} side={sideOf(i)} flows={flows} />
      ))}
    </svg>
  );
}

interface LegProps {
  readonly engine: Engine;
  readonly leg: PairLeg;
  readonly side: 0 | 1;
  readonly flows: boolean;
}

function LegMarks({ engine, leg, side, flows }: LegProps): VNode {
  const x = LEG_X[side] + (side === 0 ? 30 : -30);
  const anchor = side === 0 ? "at-left" : "at-right";
  return (
    <g>
      {leg.state === "shorted" && <path class="leak" d={leakPath(side)} />}
      {flows && leg.sparks && <path class="spark" d={sparkPath(side, "gap")} />}
      {flows && isBroken(leg) && <path class="spark" d={sparkPath(side, "break")} />}
      {flows && <path class="arrow" d={arrowPath(side, leg.isReversed)} />}
      <text class={`plug ${anchor}`} x={x} y={106}>
        {nameOf(engine, leg)}
      </text>
      <text x={x} y={124} class={anchor}>
        {SPARK.strokeShort[leg.stroke]}
      </text>
      <text x={x} y={146} class={anchor}>
        {SPARK.centreShort[centreOf(leg)]}
      </text>
      <text x={x} y={164} class={anchor}>
        {leg.state === "shorted" ? SPARK.passedBy : SPARK.kilovolts(neededOf(leg))}
      </text>
    </g>
  );
}

function InWords({ engine, firing }: FiringProps): VNode {
  const { availableV, neededV, legs, silent } = firing;
  return (
    <ul class="lesson-says">
      {hundredth(silent) > 0 && <li>{SPARK.silent(hundredth(silent))}</li>}
      {legs.map((leg) => (
        <li key={leg.cylinder}>
          {SPARK.legSays(
            nameOf(engine, leg),
            SPARK.stroke[leg.stroke],
            SPARK.centre[centreOf(leg)],
            SPARK.leg[leg.state](neededOf(leg)),
            leg.sparks ? SPARK.sparks : SPARK.noSpark,
          )}
          {leg.share > 0 && ` ${SPARK.share(leg.share)}`}
        </li>
      ))}
      <li>
        {neededV === undefined
          ? SPARK.noLoop(availableV)
          : SPARK.together(neededV, availableV, neededV <= availableV)}
      </li>
      {neededV !== undefined && legs.some(isBroken) && <li>{SPARK.bothJump}</li>}
    </ul>
  );
}

/** What the plug and a break in its leg take, V; `undefined` when nothing jumps the break. */
function neededOf({ plugV, state, breakV }: PairLeg): number | undefined {
  if (state === "shorted") return 0;
  if (state === "sound") return plugV;
  return breakV === undefined ? undefined : plugV + breakV;
}

function isBroken({ state }: PairLeg): boolean {
  return state === "open";
}

/** Whether a current flows in most cycles. */
function isFlowing({ neededV, availableV, silent }: PairFiring): boolean {
  return neededV !== undefined && neededV <= availableV && silent <= 0.5;
}

function centreOf({ isReversed }: PairLeg): "positive" | "negative" {
  return isReversed ? "positive" : "negative";
}

function nameOf(engine: Engine, { cylinder }: PairLeg): string {
  return namesOf(engine, [cylinder])[0] ?? "";
}

function sideOf(i: number): 0 | 1 {
  return i === 0 ? 0 : 1;
}
