// Has the coil the voltage that the plug needs? Gap, load, plug, coil and battery to be moved, and where it
// fails.
import type { IgnitionKind } from "@half-order/core";
import {
  type BudgetCurve,
  SPARK_RANGE,
  type SparkSetting,
  sparkCurve,
} from "@half-order/core/physics";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { sayQuantity } from "../state/unit.ts";
import { SPARK } from "../text/en-lesson-spark.ts";
import { Option } from "../ui/option.tsx";
import { Slider } from "./slider.tsx";
import { gapSteps, VOLTAGE, voltagePlan } from "./voltage-geometry.ts";

interface VoltageProps {
  readonly ignition: IgnitionKind;
  /** What the plugs of the engine should have, m. */
  readonly gapM: number;
  readonly hasPairs: boolean;
}

export function Voltage({ ignition, gapM, hasPairs }: VoltageProps): VNode {
  const [moved, setMoved] = useState<Partial<SparkSetting>>({});
  const setting: SparkSetting = {
    gapM,
    intakePa: SPARK_RANGE.intakePa[1],
    isFineWire: false,
    coilStrength: SPARK_RANGE.coilStrength[1],
    supplyV: SPARK_RANGE.supplyV[1],
    ...moved,
    ignition,
    isReversed: hasPairs && moved.isReversed === true,
  };
  const budget = sparkCurve(setting);
  const move = (part: Partial<SparkSetting>): void => setMoved({ ...moved, ...part });
  return (
    <section class="lesson-part">
      <h2>{SPARK.voltage}</h2>
      <p class="help">{SPARK.voltageLead}</p>
      <Chart budget={budget} />
      <InWords budget={budget} />
      <Sliders setting={setting} hasPairs={hasPairs} move={move} />
    </section>
  );
}

interface SlidersProps {
  /** Only a coil with two plugs fires one of them from the wrong side. */
  readonly hasPairs: boolean;
  readonly setting: SparkSetting;
  readonly move: (part: Partial<SparkSetting>) => void;
}

function Sliders({ setting, hasPairs, move }: SlidersProps): VNode {
  const { stepM, rangeM } = gapSteps();
  return (
    <>
      <Slider
        label={SPARK.gap}
        range={rangeM}
        step={stepM}
        value={setting.gapM}
        says={sayGap(setting.gapM)}
        onMove={(gapM) => move({ gapM })}
      />
      <Slider
        label={SPARK.load}
        range={SPARK_RANGE.intakePa}
        step={1000}
        value={setting.intakePa}
        says={sayQuantity(setting.intakePa / 1000, "pressure")}
        onMove={(intakePa) => move({ intakePa })}
      />
      <Slider
        label={SPARK.strength}
        range={SPARK_RANGE.coilStrength}
        step={0.01}
        value={setting.coilStrength}
        says={SPARK.strengthIs(setting.coilStrength)}
        onMove={(coilStrength) => move({ coilStrength })}
      />
      <Slider
        label={SPARK.supply}
        range={SPARK_RANGE.supplyV}
        step={0.1}
        value={setting.supplyV}
        says={SPARK.supplyIs(setting.supplyV)}
        onMove={(supplyV) => move({ supplyV })}
      />
      <Option
        say={SPARK.fineWire}
        isGiven={setting.isFineWire}
        isSeveral
        onClick={() => move({ isFineWire: !setting.isFineWire })}
      />
      {hasPairs && (
        <Option
          say={SPARK.reversed}
          isGiven={setting.isReversed}
          isSeveral
          onClick={() => move({ isReversed: !setting.isReversed })}
        />
      )}
    </>
  );
}

function Chart({ budget }: { budget: BudgetCurve }): VNode {
  const { setting, here } = budget;
  const plan = voltagePlan(budget);
  const [right, foot] = [VOLTAGE.width - VOLTAGE.right, VOLTAGE.height - VOLTAGE.bottom];
  const there = plan.y(here.availableV);
  const x = plan.x(setting.gapM);
  const own = here.plugV.map((volts) => plan.y(volts + here.seriesV));
  return (
    <svg
      class="lesson-voltage"
      viewBox={`0 0 ${VOLTAGE.width} ${VOLTAGE.height}`}
      aria-hidden="true"
    >
      {plan.levels.map((volts) => (
        <g key={volts} class="level">
          <path d={`M${VOLTAGE.left} ${plan.y(volts)}H${right}`} />
          <text class="at-side" x={VOLTAGE.left - 4} y={plan.y(volts)}>
            {volts / 1000}
          </text>
        </g>
      ))}
      {plan.gaps.map((gapM) => (
        <text key={gapM} x={within(plan.x(gapM))} y={foot + 14}>
          {sayGap(gapM)}
        </text>
      ))}
      <path class="needed" d={plan.needed} />
      <path class="there" d={`M${VOLTAGE.left} ${there}H${right}`} />
      <path class="here" d={`M${x} ${VOLTAGE.top}V${foot}`} />
      <path
        class={here.fires === "no" ? "own is-failing" : "own"}
        d={`M${x} ${own[0]}V${own[1]}`}
      />
      <text class="there-word" x={VOLTAGE.left + 4} y={there - 7}>
        {SPARK.chartThere}
      </text>
    </svg>
  );
}

/** Where the middle of a number below stands: all of it on the chart, and beside the zero. */
function within(x: number): number {
  return Math.min(Math.max(x, VOLTAGE.left + HALF_NUMBER), VOLTAGE.width - HALF_NUMBER);
}
const HALF_NUMBER = 30;

function InWords({ budget }: { budget: BudgetCurve }): VNode {
  const { setting, here, failsFromM, firesToM } = budget;
  const [low, high] = here.plugV;
  const series = setting.ignition === "distributor" ? "rotor" : "companion";
  return (
    <div class="lesson-words" role="status">
      <p>
        <b>{SPARK.fire[here.fires]}</b> {SPARK.needs(low, high)}{" "}
        {here.seriesV > 0 && `${SPARK.inSeries[series](here.seriesV)} `}
        {SPARK.gives(here.availableV)}
      </p>
      <p>
        {firesToM === undefined ? SPARK.firesNever : SPARK.firesTo(sayGap(firesToM))}{" "}
        {failsFromM === undefined
          ? SPARK.failsNever(sayGap(gapSteps().rangeM[1]))
          : SPARK.failsFrom(sayGap(failsFromM))}
      </p>
    </div>
  );
}

function sayGap(gapM: number): string {
  return sayQuantity(gapM * 1000, "gap");
}
