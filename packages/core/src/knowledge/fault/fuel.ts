// Fuel: its pressure, its quality and whether there is any; all of it meets every cylinder.
import type { Fault } from "../finding.ts";

export const FUEL: readonly Fault[] = [
  {
    id: "fuel.pressure-low",
    name: "Fuel pressure or flow too low",
    about:
      "A tired pump, a blocked filter or a weak feed to the pump cannot keep up. When much " +
      "petrol is wanted, on hills or at speed, the mixture turns lean and the leanest cylinders " +
      "skip first.",
    at: "engine",
    part: { name: "fuel pump and filter", at: "engine" },
    grounds: { basis: "memory", confidence: "low" },
    shares: { distributor: 18, pack: 17, rail: 18, "coil-per-plug": 18 },
    reach: { random: 0.81, own: 0.07, two: 0.04, bank: 0.02, neighbours: 0.01, none: 0.05 },
    shows: 0.6,
    regimes: {
      coldStart: 0.35,
      coldIdle: 0.2,
      hotIdle: 0.2,
      cruise: 0.5,
      pull: 0.95,
      wet: 0.3,
      bumps: 0.1,
    },
    risks: [
      { finding: "fuel.story", times: { "nearly-empty": 1.8, old: 1.3 } },
      { finding: "distance", times: { "under-60": 0.5, "over-200": 1.5 } },
    ],
    signs: [
      { finding: "onset", gives: { weeks: 0.34, months: 0.22, driving: 0.3, "after-wet": 0.01 } },
      { finding: "trend", gives: { worse: 0.75, stable: 0.2 } },
      { finding: "regime.smooths", gives: { worse: 0.5, no: 0.24, partly: 0.16 } },
      { finding: "regime.warmth", gives: { "hot-only": 0.28, always: 0.58 } },
      { finding: "regime.weather", gives: { "wet-only": 0.012, hot: 0.14 } },
      { finding: "codes", gives: { lean: 0.45, "fuel-pressure": 0.2 } },
      { finding: "backfire", gives: { intake: 0.1 } },
      {
        finding: "plug.look",
        gives: { tan: 0.6, pale: 0.3, "dry-black": 0.03, "wet-petrol": 0.015 },
      },
      {
        finding: "trim.idle",
        gives: { normal: 0.72, raised: 0.15, lean: 0.11 },
        grounds: { basis: "common practice", confidence: "low" },
      },
      {
        finding: "trim.speed",
        gives: { lean: 0.48, raised: 0.27, normal: 0.23 },
        grounds: { basis: "common practice", confidence: "low" },
      },
      { finding: "fuel-pressure", gives: { low: 0.9, "in-limit": 0.05 } },
      { finding: "trim.load", gives: { lean: 0.6, raised: 0.22, normal: 0.16 } },
      { finding: "burn-line", gives: { "high-short": 0.3, "spiky-end": 0.3 } },
    ],
    firstCheck: "check.trims",
    mend: "Renew the filter, mend the feed of the pump, or renew the pump.",
  },
  {
    id: "fuel.regulator-faulty",
    name: "Fuel pressure regulator sticks, or leaks into its hose",
    about:
      "The regulator holds the pressure too high, or its membrane is torn and raw petrol is " +
      "sucked through its hose into the intake. The mixture is far too rich, worst at idle; it " +
      "is a fire risk.",
    at: "engine",
    part: { name: "fuel pressure regulator", at: "engine" },
    grounds: { basis: "memory", confidence: "low" },
    fuelling: "injection",
    shares: { distributor: 7.1, pack: 6.5, rail: 6.8, "coil-per-plug": 5.1 },
    reach: { random: 0.55, own: 0.28, two: 0.05, neighbours: 0.03, bank: 0.02, none: 0.07 },
    shows: 0.85,
    regimes: {
      coldStart: 0.35,
      coldIdle: 0.5,
      hotIdle: 0.9,
      cruise: 0.35,
      pull: 0.2,
      wet: 0.3,
      bumps: 0.05,
    },
    risks: [{ finding: "distance", times: { "under-60": 0.4, "over-200": 1.4 } }],
    signs: [
      { finding: "onset", gives: { driving: 0.2, start: 0.15, weeks: 0.35, months: 0.2 } },
      { finding: "trend", gives: { worse: 0.6, stable: 0.37 } },
      { finding: "regime.smooths", gives: { yes: 0.5, partly: 0.32 } },
      { finding: "regime.warmth", gives: { "hot-restart": 0.25, "hot-only": 0.2, always: 0.45 } },
      { finding: "regime.standing", gives: { "hot-stop": 0.28, night: 0.15 } },
      { finding: "regime.weather", gives: { "wet-only": 0.012, "no-link": 0.88 } },
      { finding: "codes", gives: { rich: 0.5, "oxygen-sensor": 0.1, catalyst: 0.12 } },
      { finding: "smell", gives: { petrol: 0.5, "petrol-in-oil": 0.3, "rotten-egg": 0.15 } },
      { finding: "smoke", gives: { black: 0.5, "not-told": 0.13 } },
      {
        finding: "plug.look",
        gives: { "dry-black": 0.6, "wet-petrol": 0.194, tan: 0.13, wet: 0.026 },
      },
      { finding: "trim.idle", gives: { rich: 0.75, normal: 0.2 } },
      { finding: "trim.speed", gives: { rich: 0.5, normal: 0.45 } },
      { finding: "fuel-pressure", gives: { high: 0.5, "bleeds-down": 0.32, "in-limit": 0.16 } },
      { finding: "trim.load", gives: { rich: 0.4, normal: 0.55 } },
    ],
    wears: [{ fault: "plug.fouled", times: 3 }],
    firstCheck: "check.smell",
    mend: "Renew the regulator and its hose; change the oil if it smells of petrol.",
  },
  {
    id: "fuel.contaminated",
    name: "Wrong, stale or watery fuel",
    about:
      "There is water, diesel, old petrol or far too much alcohol in the tank. It burns badly " +
      "or not at all, so all cylinders stumble, usually soon after filling or after long " +
      "storage.",
    at: "engine",
    part: { name: "fuel in the tank", at: "engine" },
    grounds: { basis: "memory", confidence: "low" },
    shares: { distributor: 9.1, pack: 8.3, rail: 8.8, "coil-per-plug": 9.2 },
    reach: { random: 0.85, own: 0.05, two: 0.04, bank: 0.01, none: 0.05 },
    shows: 0.65,
    regimes: {
      coldStart: 0.65,
      coldIdle: 0.65,
      hotIdle: 0.65,
      cruise: 0.65,
      pull: 0.8,
      wet: 0.3,
      bumps: 0.05,
    },
    risks: [
      {
        finding: "fuel.story",
        times: { normal: 0.35, "just-filled": 3, "nearly-empty": 0.7, old: 4, can: 6 },
        grounds: { basis: "common practice", confidence: "low" },
      },
    ],
    signs: [
      {
        finding: "onset",
        gives: { "after-refuelling": 0.3, driving: 0.25, start: 0.25, weeks: 0.07, months: 0.03 },
        grounds: { basis: "common practice", confidence: "low" },
      },
      { finding: "trend", gives: { worse: 0.35, better: 0.2 } },
      { finding: "regime.smooths", gives: { no: 0.35, partly: 0.33, worse: 0.2 } },
      { finding: "regime.weather", gives: { "wet-only": 0.015, "no-link": 0.89 } },
      { finding: "codes", gives: { lean: 0.3, rich: 0.06 } },
      { finding: "sound", gives: { knock: 0.2 } },
      { finding: "smoke", gives: { white: 0.1, black: 0.08, blue: 0.04, "not-told": 0.05 } },
      {
        finding: "plug.look",
        gives: { tan: 0.6, pale: 0.1, "dry-black": 0.14, "wet-petrol": 0.079, wet: 0.011 },
      },
      { finding: "trim.idle", gives: { normal: 0.48, lean: 0.25, rich: 0.12 } },
      { finding: "trim.speed", gives: { normal: 0.5, lean: 0.24, rich: 0.11 } },
      { finding: "trim.load", gives: { normal: 0.5, lean: 0.25, rich: 0.1 } },
      { finding: "fuel.sample", gives: { separates: 0.75 } },
    ],
    firstCheck: "check.fuel-story",
    mend: "Drain the tank, renew the filter, fill with fresh petrol.",
  },
  {
    id: "fuel.nearly-empty",
    name: "Tank nearly empty",
    about:
      "With little petrol left the pump sucks air in bends and on hills, and all cylinders " +
      "stumble for a moment. A gauge that reads too high hides it.",
    at: "engine",
    part: { name: "fuel in the tank", at: "engine" },
    grounds: { basis: "memory", confidence: "low" },
    shares: { distributor: 4, pack: 3.7, rail: 3.9, "coil-per-plug": 4.1 },
    reach: { random: 0.9, own: 0.03, two: 0.02, none: 0.05 },
    shows: 0.35,
    regimes: {
      coldStart: 0.1,
      coldIdle: 0.1,
      hotIdle: 0.2,
      cruise: 0.5,
      pull: 0.65,
      wet: 0.3,
      bumps: 0.5,
    },
    risks: [
      {
        finding: "fuel.story",
        times: { normal: 0.15, "just-filled": 0.1, "nearly-empty": 18, can: 0.5, old: 0.5 },
      },
    ],
    signs: [
      {
        finding: "complaint.main",
        gives: {
          "jerks-under-load": 0.31,
          "cuts-out": 0.34,
          "lacks-power": 0.12,
          stalls: 0.1,
          shakes: 0.05,
        },
      },
      {
        finding: "onset",
        gives: { driving: 0.82, start: 0.08, "after-work": 0.02, weeks: 0.03, months: 0.01 },
      },
      { finding: "regime.weather", gives: { "wet-only": 0.012 } },
      { finding: "codes", gives: { "low-fuel": 0.4, lean: 0.2, "fuel-pressure": 0.05 } },
      {
        finding: "plug.look",
        gives: { tan: 0.85, pale: 0.07, "dry-black": 0.03, "wet-petrol": 0.01 },
      },
      { finding: "trim.speed", gives: { normal: 0.65, lean: 0.18, raised: 0.14 } },
      { finding: "fuel-pressure", gives: { low: 0.3 } },
      { finding: "trim.load", gives: { lean: 0.3, raised: 0.2, normal: 0.45 } },
    ],
    firstCheck: "check.fuel-story",
    mend: "Fill the tank; check the gauge if it showed more.",
  },
];
