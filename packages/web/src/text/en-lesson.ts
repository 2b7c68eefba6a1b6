// The words of the lesson: break a part of an engine and watch what physics makes of it.
import type {
  BrokenFigureName,
  PlaceKind,
  SimulatedFaultId,
  SimulatedRegimeName,
} from "@half-order/core/physics";

export const kV = (volts: number): string => `${(volts / 1000).toFixed(1)} kV`;
/** A leak is told as a round hole of its area: everybody has seen holes, in any unit. */
const hole = (area: number, length: (metres: number) => string): string =>
  `the leak is as wide as a hole of ${length(2 * Math.sqrt(area / Math.PI))}`;
const cylinder = (who: string, n: number): string => `${n === 1 ? "Cylinder" : "Cylinders"} ${who}`;
export const percent = (share: number): string =>
  share > 0 && share < 0.01
    ? `${Math.max(0.1, share * 100).toFixed(1)} %`
    : `${Math.round(share * 100)} %`;
const jumps = (volts: number): string =>
  volts === Number.POSITIVE_INFINITY
    ? "nothing jumps the break"
    : `jumping the break takes ${kV(volts)} more`;
const shaken = (share: number): string =>
  `shaken hard, in ${percent(share)} more, and any engine that runs shakes it a little`;
const gate = (of: string) => (volts: number) => `${of} lets go from ${kV(volts)} on`;

/** What is said of the model, SI; bore and stroke with their unit. */
export interface ModelFigures {
  readonly bore: string;
  readonly stroke: string;
  readonly inertiaKgM2: number;
  readonly rpm: number;
}

export const LESSON = {
  title: "Break a part and watch",
  lead: "Break one part, and see which cylinders drop out, which codes are stored, how it shakes.",
  model:
    "This is a model of an ordinary petrol engine at work, not a measurement of yours. Its parts break by physics: breakdown voltage, coil energy, leaks, mixture, flywheel. Sizes and limits are those of textbooks and, where none were found, of memory. It takes no number from the tables that rank faults. Do not try it on a real engine: ignition voltage can injure, and unburnt petrol ruins the catalyst.",
  assumes: "What the model assumes",
  assumptions: ({ bore, stroke, inertiaKgM2, rpm }: ModelFigures): readonly string[] => [
    `Every cylinder is ${bore} × ${stroke} and all turn one flywheel of ${inertiaKgM2} kg·m², whatever the engine; the shake is drawn at a warm idle of ${rpm} revolutions a minute, where a hand feels it.`,
    "The load takes up the mean torque of each cycle; engine mounts, belts and the body are left out.",
    "The size of the break is drawn from what is possible, until somebody would notice it and the engine still runs.",
    "Control units differ: made-up ones with other limits read the same drive.",
    "Coils, dwell and electrodes are those of handbooks, one set for each kind of ignition.",
  ],

  practice: "Let the page hide a fault, and look for it",

  engine: "Engine",
  caseEngine: (name: string): string => `Of the open case: ${name}`,
  byKind: "Another, by its kind",
  cylinders: "Cylinders",
  ignition: "Ignition",
  order: "Firing order",

  where: "Where",
  tapHelp: "Tap a mark of the dial to break it.",
  groups: {
    coil: "Coil",
    leg: "Leg, the way to one plug: plug, boot, cable",
    lead: "Plug cable",
    cylinder: "Cylinder: injector, valves, rings",
    neighbours: "Gasket between two cylinders",
    connector: "Connector of the coils",
    bank: "Bank",
    set: "All plugs together",
    engine: "Whole engine: supply, fuel, air, sensor",
  } satisfies Record<PlaceKind, string>,
  spots: {
    coil: (of) => `Coil of ${of}`,
    leg: (of) => `Leg of ${of}`,
    lead: (of) => `Cable of ${of}`,
    cylinder: (of) => `Cylinder ${of}`,
    neighbours: (of) => `Between ${of}`,
    connector: (of) => `Connector of ${of}`,
    bank: (of) => `Bank of ${of}`,
    set: () => "All plugs",
    engine: () => "Whole engine",
  } satisfies Record<PlaceKind, (of: string) => string>,
  groupWithRotor: "Whole engine: rotor, supply, fuel, air, sensor",
  spotWithRotor: "Whole engine, its rotor too",
  how: "How it fails",
  faults: {
    "plug.gap-worn": "Plug: gap worn wide",
    "plug.set-worn": "Plugs: all gaps worn wide",
    "plug.gap-wrong": "Plug: gap bent wrong",
    "plug.cracked": "Plug: porcelain cracked",
    "plug.flashover": "Plug: sparks down its outside",
    "plug.fouled": "Plug: nose fouled",
    "boot.leaking": "Boot: leaks to the metal",
    "boot.no-contact": "Boot: no contact with the plug",
    "well.water": "Plug well: water in it",
    "lead.open": "Cable: broken inside",
    "lead.leaking": "Cable: leaks through its cover",
    "coil.half-dead": "Coil: dead, always or when hot",
    "coil.leg-leaks": "Coil: leaks inside, at this end",
    "coil.weak": "Coil: weak",
    "coil.single-dead": "Coil: dead, always or when hot",
    "coil.distributor": "Coil: weak",
    "connector.loose": "Connector: a loose contact",
    "supply.low": "Supply of the coils: a bad contact",
    "driver.dead": "Control unit: coil not switched",
    "trigger-wire.broken": "Trigger wire of this coil: broken",
    "cap.cracked": "Distributor cap: cracked here",
    "rotor.leaking": "Rotor: leaks to its shaft",
    "injector.dead": "Injector: dead",
    "injector.clogged": "Injector: clogged",
    "injector.leaking": "Injector: leaks",
    "fuel.pressure-low": "Fuel: pressure or flow too low",
    "intake.runner-leak": "Intake: lets air in here",
    "intake.hose-leak": "Intake: a hose lets air in",
    "valve.leaking": "Valve: does not seal",
    "gasket.between-cylinders": "Head gasket: burnt through",
    "rings.worn": "Rings: worn",
    "crank-sensor.weak": "Crank sensor: drops out when hot",
  } satisfies Record<SimulatedFaultId, string>,
  again: "Break it in another size",
  againHelp:
    "Each time it is another engine of the kind: coil and plugs differ from the last one as sound ones do.",
  /** Only of gaps: the voltage that they ask for grows with them, that of the coil is another each time. */
  againGap: "So a wider gap may for once miss less.",

  working: "Breaking it and driving …",
  broke: "This could not be worked out",
  never:
    "In no size that was tried would somebody notice this break and the engine still run. On this engine it stops at once, or it makes no difference.",
  result: "What comes of it",
  what: "What exactly is broken",
  /** `length` says metres in the unit of the person. */
  figures: {
    "plug.gapM": (v, length) => `the gap is ${length(v)}`,
    "plug.edge": (v) => `its rounded edges ask for ${percent(v - 1)} more voltage`,
    "plug.arcV": gate("its porcelain"),
    "boot.arcV": gate("the boot"),
    "lead.arcV": gate("the cable"),
    "tower.arcV": gate("the cap"),
    "coil-leg.arcV": gate("the inside of the coil"),
    "rotor.arcV": gate("the rotor"),
    "boot.breakV": jumps,
    "lead.breakV": jumps,
    "plug.shuntOhm": (v) => `across its nose lie ${Math.round(v / 1000)} kΩ when cold`,
    "well.water": (v) => `water fills ${percent(Math.min(1, v))} of what the well can hold`,
    "coil.strength": (v) => `the coil has ${percent(v)} of its energy`,
    "coil.off": (v) => `the coil gives nothing in ${percent(v)} of cycles, cold or hot`,
    "coil.offCold": (v) => `cold it gives nothing in ${percent(v)} of cycles`,
    "coil.offHot": (v) => `hot it gives nothing in ${percent(v)} of cycles`,
    "trigger.still": (v) => `at rest its trigger is missing in ${percent(v)} of cycles`,
    "trigger.shaken": shaken,
    "feed.still": (v) => `at rest its feed is open in ${percent(v)} of cycles`,
    "feed.shaken": shaken,
    "supply.ohm": (v) => `the supply has ${v.toFixed(2)} Ω too much`,
    "supply.still": (v) => `at rest it opens in ${percent(v)} of cycles`,
    "supply.shaken": shaken,
    "injector.dose": (v) => `it gives ${percent(v)} of its dose`,
    "injector.leakKgS": (v) => `it drips ${(v * 1e6).toFixed(0)} mg a second`,
    "fuel.pressure": (v) => `pressure is ${percent(v)} of what it should be`,
    "fuel.pumpFlow": (v) => `the pump gives ${percent(v)} of what full load takes`,
    "runner.areaM2": hole,
    "hose.areaM2": hole,
    "valve.areaM2": hole,
    "rings.areaM2": hole,
    "gasket.areaM2": hole,
    "crank.offHot": (v) => `hot, the signal is missing in ${percent(v)} of cycles`,
  } satisfies Record<
    BrokenFigureName,
    (value: number, length: (metres: number) => string) => string
  >,
  wet: (share: number): string => `, wet from ${percent(share)} of that`,
  ofCylinders: (of: string, n: number, says: string): string =>
    `${n === 1 ? "Cylinder" : "Cylinders"} ${of}: ${says}.`,
  ofAll: (says: string): string => `${says.charAt(0).toUpperCase()}${says.slice(1)}.`,

  misses: "Who misses, and when",
  missesHelp:
    "Misses in 100 cycles; a few may be chance, as in a sound engine. Choose a way of driving: the dial and the shake follow.",
  driving: "Driving",
  regimes: {
    coldStart: "Cold start",
    coldIdle: "Idle, cold",
    hotIdle: "Idle, warm",
    hotRestart: "Hot restart",
    cruise: "Steady at light load",
    pull: "Pulling hard",
    climb: "Climbing, dry",
    wet: "Climbing, in rain",
    bumps: "Bad road",
  } satisfies Record<SimulatedRegimeName, string>,
  inRegime: (regime: string): string => `As it is now: ${regime.toLowerCase()}.`,
  mostLost: "most is lost here",
  none: "no cylinder misses more than a sound one does",
  all: "all cylinders miss now and then",
  missing: (regime: string, who: string): string => `${regime}: ${who}.`,
  allAlike: (names: string, share: number): string =>
    `cylinders ${names} each in ${share} of 100 cycles`,
  one: (name: string, share: number): string => `cylinder ${name} in ${share} of 100 cycles`,
  dark: (names: string): string =>
    `Where it misses, there is no spark at ${names}: the petrol goes out unburnt.`,
  lit: (names: string): string =>
    `Where it misses, there is a spark at ${names}; the charge does not burn.`,

  codes: "What a code reader shows",
  codesHelp: (n: number): string =>
    `The same drive, read by ${n} made-up control units. Not all makers store the same.`,
  code: {
    several: "several cylinders misfire",
    misfire: (name: string) => `cylinder ${name} misfires`,
    coil: (of: string) => `circuit of the coil of ${of}`,
    injector: (name: string) => `circuit of the injector of ${name}`,
    crank: "crankshaft sensor",
    lean: "mixture too lean",
    rich: "mixture too rich",
  },
  atStartOnly: (who: string, n: number): string =>
    `${cylinder(who, n)} ${n === 1 ? "misses" : "miss"} in the first seconds after a start alone, and those are shorter than any window in which a control unit counts: no code comes of it.`,
  leanByTrim: (rich: string, nRich: number, taken: number, lean: string, n: number): string =>
    `${cylinder(rich, nRich)} ${nRich === 1 ? "gets" : "get"} too much petrol. The oxygen sensor sees only the exhaust of all together, so the control unit takes ${taken} % from every cylinder: ${lean} ${n === 1 ? "runs" : "run"} too lean and ${n === 1 ? "misses" : "miss"}, though sound.`,
  units: (n: number, of: number): string => `${n} of ${of}`,
  noCodes: "None of them stores a code.",
  lamp: "Lamp",
  lamps: {
    off: "off",
    steady: "on, steady",
    blinking: "blinking",
    "blinked-then-steady": "blinked, then steady",
  },
  counters: "Misfire counters of the first of them",
  counter: (name: string): string => `Cylinder ${name}`,

  shake: "The rhythm of the shake",
  traceHelp:
    "Speed of the crankshaft over two turns, drawn at idle speed, where a hand feels it; from left to right as the dial goes round clockwise. Thin: sound. Thick: with those who miss (×) in the way of driving that is chosen.",
  cyclesHelp: (n: number): string =>
    `${n} cycles in a row of this way of driving, from left to right: × missed, · burnt. They are what is to be heard.`,
  trace: {
    none: "Nobody misses here, so both lines are one.",
    nobody: "No cylinder fires in any cycle: nothing is left that could shake it.",
    never: (who: string, n: number): string =>
      `Drawn is every cycle: ${who} never ${n === 1 ? "fires" : "fire"}.`,
    steady: (each: string): string => `Drawn is nearly every cycle, missed by ${each}.`,
    besides: (each: string): string => `Now and then it is missed by ${each} too.`,
    together: (each: string): string =>
      `Missed now and then: by ${each}, mostly all at once. That is a jerk and no rhythm, so the sound engine alone is drawn.`,
    byChance: (each: string, who: string, n: number): string =>
      `Missed now and then: by ${each}. Drawn is one of those cycles, in which ${who} ${n === 1 ? "misses" : "miss"}; by chance the next is another, so the jolt has no steady beat.`,
    lost: (name: string, rpm: number) =>
      `From the firing of ${name} to the next the engine loses ${rpm.toFixed(1)} revolutions a minute instead of gaining some.`,
    blackout: (n: number) => `In ${n} of 100 cycles no coil fires at all: a jerk, not a rhythm.`,
  },
  beat: {
    half: "It shakes once in two turns: one gap in a whole cycle of 720°.",
    whole:
      "It shakes once every turn: the gaps lie one turn apart, so what comes once in two turns cancels.",
    mixed: (times: string) => `It shakes most ${times}.`,
  },
  times: (order: number): string =>
    Number.isInteger(order)
      ? order === 1
        ? "once a turn"
        : `${order} times a turn`
      : order === 0.5
        ? "once in two turns"
        : `${2 * order} times in two turns`,
  hertz: (hz: number, rpm: number): string =>
    `At ${rpm} revolutions a minute that is ${hz.toFixed(1)} times a second.`,
  orders: "All rhythms in it",
  ordersHelp:
    "The swing of the speed taken apart (a Fourier sum), revolutions a minute to either side.",
  orderHead: ["How often", "A second", "Sound", "Broken"],
  angle: "Crank angle",
  atAngle: (degrees: number, rpm: number, who: string): string =>
    `${degrees}°: ${rpm.toFixed(0)} revolutions a minute${who}`,
  fires: (name: string): string => `; ${name} fired last`,
  shouldFire: (name: string): string => `; ${name} should have fired last`,
  nextFiring: "To the next firing",
  turn: "Turn slowly",
  stopTurn: "Stop turning",
  hear: "Hear it",
  stopHear: "Stop the sound",
  hearHelp:
    "One beat for each stroke that burns, at idle speed. It is the rhythm that is true, not the sound.",
} as const;
