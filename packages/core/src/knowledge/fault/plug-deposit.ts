// Spark plugs that soot, oil or a crust has covered: often the result of something else.
import type { Fault } from "../finding.ts";

export const PLUG_DEPOSIT: readonly Fault[] = [
  {
    id: "plug.fouled",
    name: "Plug of cylinder {at} sooted or wet with petrol",
    about:
      "Soot or liquid petrol bridges the nose of the plug and the current runs off without a " +
      "spark. Many short trips or a flooded start do it; more often a dead spark or too much " +
      "fuel came first.",
    at: "leg",
    part: { name: "spark plug", at: "leg" },
    grounds: { basis: "memory", confidence: "low" },
    shares: { distributor: 18, pack: 14, rail: 14, "coil-per-plug": 12 },
    reach: { own: 0.88, group: 0.04, neighbours: 0.02, random: 0.05, elsewhere: 0.01 },
    shows: 0.65,
    regimes: {
      coldStart: 0.95,
      coldIdle: 0.9,
      hotIdle: 0.5,
      cruise: 0.2,
      pull: 0.35,
      wet: 0.3,
      bumps: 0.05,
    },
    risks: [
      { finding: "plug.type", times: { "other-number": 1.5 } },
      { finding: "renewed", times: { plugs: 0.35 } },
      { finding: "fuel.story", times: { old: 1.5 } },
    ],
    signs: [
      {
        finding: "onset",
        gives: { start: 0.42, weeks: 0.2, months: 0.1, driving: 0.1, "after-work": 0.05 },
      },
      { finding: "trend", gives: { worse: 0.45, stable: 0.33 } },
      { finding: "codes", gives: { rich: 0.14, "cold-start": 0.25, catalyst: 0.04 } },
      { finding: "regime.smooths", gives: { yes: 0.45, partly: 0.32 } },
      {
        finding: "regime.warmth",
        gives: { "cold-only": 0.26, "clears-at-once": 0.12, "clears-later": 0.2 },
      },
      { finding: "regime.standing", gives: { night: 0.3, "hot-stop": 0.08 } },
      { finding: "smell", gives: { petrol: 0.35, "petrol-in-oil": 0.06 } },
      { finding: "smoke", gives: { black: 0.14 } },
      {
        finding: "plug.look",
        gives: { "dry-black": 0.5, "wet-petrol": 0.38, tan: 0.05, "wet-oil": 0.03 },
      },
      { finding: "trim.idle", gives: { rich: 0.15 } },
      { finding: "spark", gives: { strong: 0.95 } },
      { finding: "swap.plug", gives: { moved: 0.4 } },
    ],
    firstCheck: "check.plugs-out",
    mend: "Clean or renew the plug, then find what fouled it.",
  },
  {
    id: "plug.oil-fouled",
    name: "Plug of cylinder {at} covered with oil",
    about:
      "Oil gets into the cylinder past rings, valve guides or the crankcase vent and burns onto " +
      "the plug until the current creeps off. Oil on the threads alone comes from the well and " +
      "is another story.",
    at: "leg",
    part: { name: "spark plug", at: "leg" },
    grounds: { basis: "memory", confidence: "low" },
    shares: { distributor: 12, pack: 11, rail: 12, "coil-per-plug": 12 },
    reach: { own: 0.82, group: 0.02, neighbours: 0.04, random: 0.1, elsewhere: 0.02 },
    shows: 0.4,
    regimes: {
      coldStart: 0.8,
      coldIdle: 0.8,
      hotIdle: 0.65,
      cruise: 0.2,
      pull: 0.35,
      wet: 0.3,
      bumps: 0.05,
    },
    risks: [
      { finding: "oil.use", times: { none: 0.4, some: 1.3, much: 3.5 } },
      {
        finding: "distance",
        times: { "under-60": 0.3, "60-120": 0.7, "120-200": 1.1, "over-200": 1.8 },
      },
      { finding: "renewed", times: { plugs: 0.6 } },
    ],
    signs: [
      { finding: "onset", gives: { months: 0.5, weeks: 0.26, start: 0.12, driving: 0.06 } },
      { finding: "trend", gives: { worse: 0.7, stable: 0.27 } },
      { finding: "codes", gives: { catalyst: 0.12, "cold-start": 0.1, lean: 0.08 } },
      { finding: "regime.smooths", gives: { yes: 0.42, partly: 0.33 } },
      {
        finding: "regime.warmth",
        gives: { "cold-only": 0.2, "clears-later": 0.15, "clears-at-once": 0.09 },
      },
      { finding: "regime.standing", gives: { night: 0.32 } },
      { finding: "smell", gives: { "burning-oil": 0.16 } },
      { finding: "smoke", gives: { blue: 0.32 } },
      {
        finding: "plug.look",
        gives: { "wet-oil": 0.72, crust: 0.13, "dry-black": 0.07, tan: 0.05 },
      },
      { finding: "compression", gives: { low: 0.2 } },
      { finding: "compression.wet", gives: { rises: 0.5 } },
      { finding: "leak-down", gives: { worn: 0.25, leaking: 0.15 } },
      { finding: "leak.sound", gives: { filler: 0.3, nowhere: 0.62 } },
      { finding: "spark", gives: { strong: 0.95 } },
      { finding: "swap.plug", gives: { moved: 0.5 } },
      { finding: "trim.idle", gives: { lean: 0.18, raised: 0.15 } },
    ],
    firstCheck: "check.plugs-out",
    mend: "Renew the plug; check crankcase vent, rings and guides for the oil.",
  },
  {
    id: "plug.deposits",
    name: "Plug of cylinder {at} crusted",
    about:
      "Coolant, burnt oil or a fuel additive leaves a coloured crust on the nose. Hot and under " +
      "load the crust conducts or glows, and the spark is lost.",
    at: "leg",
    part: { name: "spark plug", at: "leg" },
    grounds: { basis: "memory", confidence: "low" },
    shares: { distributor: 4, pack: 3.7, rail: 3.9, "coil-per-plug": 4.1 },
    reach: { own: 0.68, group: 0.03, neighbours: 0.05, random: 0.22, elsewhere: 0.02 },
    shows: 0.4,
    regimes: {
      coldStart: 0.2,
      coldIdle: 0.2,
      hotIdle: 0.35,
      cruise: 0.35,
      pull: 0.95,
      wet: 0.3,
      bumps: 0.05,
    },
    risks: [
      { finding: "coolant", times: { no: 0.8, loss: 2.5, overheated: 2 } },
      { finding: "oil.use", times: { none: 0.75, some: 1.2, much: 2.2 } },
      { finding: "plug.age", times: { "under-10": 0.5, "over-100": 1.5 } },
      { finding: "renewed", times: { plugs: 0.3 } },
    ],
    signs: [
      { finding: "onset", gives: { weeks: 0.5, months: 0.28, driving: 0.12, "after-work": 0.01 } },
      { finding: "trend", gives: { worse: 0.75, stable: 0.23 } },
      { finding: "codes", gives: { catalyst: 0.1, "oxygen-sensor": 0.06, lean: 0.08 } },
      { finding: "regime.smooths", gives: { worse: 0.34, no: 0.28, partly: 0.22 } },
      { finding: "regime.warmth", gives: { "hot-only": 0.34, "cold-only": 0.05 } },
      { finding: "sound", gives: { knock: 0.12 } },
      { finding: "smell", gives: { sweet: 0.08, "burning-oil": 0.08 } },
      { finding: "smoke", gives: { white: 0.07, blue: 0.1 } },
      { finding: "plug.look", gives: { crust: 0.8, "steam-clean": 0.05, pale: 0.05, tan: 0.05 } },
      { finding: "spark", gives: { strong: 0.95 } },
      { finding: "swap.plug", gives: { moved: 0.6 } },
      { finding: "trim.idle", gives: { lean: 0.18, raised: 0.15 } },
    ],
    firstCheck: "check.plugs-out",
    mend: "Renew the plugs and find where the crust comes from.",
  },
];
