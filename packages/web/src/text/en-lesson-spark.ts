// The words of the lesson on the spark: the current of a double coil through both its plugs, and the voltage that a
// plug needs against that which is there.
import { kV, percent } from "./en-lesson.ts";

export const SPARK = {
  circuit: "The current through both plugs",
  circuitLead:
    "A double coil has no end at ground: its current runs through one plug, over the head and back through the other. So it crosses both gaps, and one of them always from the wrong side.",
  toFire: (name: string): string => `${name} is to fire`,
  noPair: "On this engine no coil has two plugs.",
  winding: "coil",
  head: "head",
  stroke: {
    compression: "compressed charge",
    exhaust: "exhaust",
  },
  centre: {
    positive: "with its centre electrode positive",
    negative: "with its centre electrode negative",
  },
  strokeShort: { compression: "compression", exhaust: "exhaust" },
  centreShort: { positive: "+ centre", negative: "− centre" },
  passedBy: "passed by",
  noCurrent: "no current",
  kilovolts: (v: number | undefined): string => (v === undefined ? "way broken" : kV(v)),
  leg: {
    sound: (v: number | undefined): string => `needs ${kV(v ?? 0)}`,
    shorted: (): string => "the current passes the gap by",
    open: (v: number | undefined): string =>
      v === undefined ? "the way is broken and nothing jumps it" : `needs ${kV(v)} with the break`,
  },
  legSays: (name: string, stroke: string, centre: string, says: string, spark: string): string =>
    `Plug ${name}, in ${stroke}, ${centre}: ${says}; ${spark}.`,
  sparks: "it sparks",
  noSpark: "no spark",
  share: (of: number): string => `${percent(of)} of the voltage falls here.`,
  together: (needed: number, available: number, isEnough: boolean): string =>
    `Both together need ${kV(needed)}; the coil can give ${kV(available)}${isEnough ? "." : ": too little, and neither sparks."}`,
  noLoop: (available: number): string =>
    `Nothing closes the loop: the coil's ${kV(available)} reach neither plug.`,
  bothJump:
    "A break in one leg lies in the loop of both plugs: the coil must jump it whichever of them is to fire. The plug with its centre electrode positive needs more, so that one may miss more even when the break is in the other leg.",
  silent: (n: number): string =>
    `In ${n} of 100 cycles the coil itself stays silent, and neither plug sparks. What follows is of a coil at work.`,

  voltage: "Voltage needed, voltage there",
  voltageLead:
    "A bench of its own, with a sound coil and plug whatever is broken above, and sliders to make them worse. A wider gap and a denser charge need more volts; a weak coil or a low battery gives less. Where the lines cross, the spark fails.",
  gap: "Gap",
  load: "Pressure in the intake (load)",
  strength: "Energy of the coil",
  supply: "Battery",
  strengthIs: percent,
  supplyIs: (v: number): string => `${v.toFixed(1)} V`,
  fineWire: "Centre electrode of fine wire",
  reversed: "Centre electrode positive",
  needs: (low: number, high: number): string =>
    `The plug needs ${kV(low)} to ${kV(high)}: two published formulas, and the truth lies about between.`,
  inSeries: {
    rotor: (v: number) => `The gap of the rotor takes ${kV(v)} more.`,
    companion: (v: number) => `The companion's plug, in exhaust, takes ${kV(v)} more.`,
  },
  gives: (v: number): string => `The coil can give ${kV(v)}.`,
  fire: {
    yes: "It fires.",
    either: "It may fire or fail: the formulas disagree here.",
    no: "It fails.",
  },
  failsFrom: (gap: string): string =>
    `With everything else as set, it fails from a gap of ${gap} on.`,
  failsNever: (most: string): string =>
    `With everything else as set, no gap up to ${most} surely fails.`,
  firesTo: (gap: string): string => `It surely fires up to a gap of ${gap}.`,
  firesNever: "At no gap does it surely fire.",
  chartThere: "there",
} as const;
