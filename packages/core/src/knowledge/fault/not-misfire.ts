// What passes for a misfire: counts without one, and shakes that are none.
import type { Fault } from "../finding.ts";

export const NOT_MISFIRE: readonly Fault[] = [
  {
    id: "not-misfire.false-count",
    name: "Counted as misfire, but none: rough road, driveline or belt pulley",
    about:
      "The control unit takes small jerks of the crankshaft for misfires. Bad roads, a worn " +
      "joint or a loose pulley jerk it too; the engine itself runs well.",
    at: "engine",
    part: { name: "pulley, joints or wheels", at: "engine" },
    grounds: { basis: "memory", confidence: "low" },
    switching: "electronic",
    fuelling: "injection",
    shares: { distributor: 1, pack: 4.6, rail: 4.9, "coil-per-plug": 7.2 },
    reach: { random: 0.82, own: 0.05, consecutive: 0.04, two: 0.03, none: 0.04, elsewhere: 0.02 },
    shows: 0.35,
    regimes: {
      coldStart: 0.05,
      coldIdle: 0.05,
      hotIdle: 0.05,
      cruise: 0.65,
      pull: 0.5,
      wet: 0.2,
      bumps: 0.5,
    },
    risks: [
      { finding: "work", times: { "clutch-or-crank-sensor": 1.5 } },
      { finding: "renewed", times: { plugs: 1.7, coils: 1.7, leads: 1.5, injectors: 1.5 } },
    ],
    signs: [
      {
        finding: "complaint.main",
        gives: { "lamp-only": 0.7, "shakes-at-idle": 0.02, "jerks-under-load": 0.13, shakes: 0.02 },
      },
      { finding: "onset", gives: { driving: 0.55, weeks: 0.18 } },
      { finding: "trend", gives: { stable: 0.65, worse: 0.25 } },
      { finding: "regime.worst", gives: { cruise: 0.4, idle: 0.02, pull: 0.15 } },
      { finding: "exhaust.paper", gives: { steady: 0.88, flutter: 0.1 } },
      { finding: "plug.look", gives: { tan: 0.88 } },
      { finding: "spark", gives: { strong: 0.97 } },
      { finding: "compression", gives: { "in-limit": 0.98 } },
    ],
    firstCheck: "check.counts",
    mend: "Drive a smooth road and read the counts again; cure pulley, joints or tyres.",
  },
  {
    id: "not-misfire.not-learned",
    name: "Counted as misfire, but none: crank variation not learned",
    about:
      "The control unit knows the small unevenness of its own tooth ring by heart. After work " +
      "on crank sensor, clutch or engine it must learn it anew, or it counts misfires that are " +
      "none.",
    at: "engine",
    part: { name: "crank variation learning", at: "engine" },
    grounds: { basis: "memory", confidence: "low" },
    shares: { pack: 2.8, rail: 2.9, "coil-per-plug": 5.1 },
    reach: { own: 0.4, companions: 0.25, neighbours: 0.03, random: 0.3, elsewhere: 0.02 },
    shows: 0.6,
    regimes: {
      coldStart: 0.05,
      coldIdle: 0.1,
      hotIdle: 0.1,
      cruise: 0.8,
      pull: 0.5,
      wet: 0.3,
      bumps: 0.05,
    },
    risks: [
      {
        finding: "work",
        times: { "clutch-or-crank-sensor": 8, belt: 2.5, "head-or-manifold": 3.5, battery: 2.5 },
      },
      { finding: "renewed", times: { plugs: 1.5, coils: 1.5 } },
    ],
    signs: [
      {
        finding: "complaint.main",
        gives: { "lamp-only": 0.85, "shakes-at-idle": 0.02, "jerks-under-load": 0.04 },
      },
      { finding: "onset", gives: { "after-work": 0.35, driving: 0.4 } },
      { finding: "trend", gives: { stable: 0.9, worse: 0.06 } },
      { finding: "regime.worst", gives: { "high-revs": 0.3, overrun: 0.25, cruise: 0.25 } },
      { finding: "codes", gives: { "not-learned": 0.5 } },
      { finding: "exhaust.paper", gives: { steady: 0.88, flutter: 0.1 } },
      { finding: "plug.look", gives: { tan: 0.88 } },
      { finding: "spark", gives: { strong: 0.97 } },
      { finding: "compression", gives: { "in-limit": 0.98 } },
    ],
    firstCheck: "check.codes",
    mend: "Have the crank variation learned again with a suitable reader.",
  },
  {
    id: "not-misfire.other-shake",
    name: "A shake, but no misfire: mount, low idle, accessory or converter",
    about:
      "A broken engine mount, an idle that is too low, a dragging accessory or a shuddering " +
      "torque converter feels like a misfire, while all cylinders pull alike.",
    at: "engine",
    part: { name: "mounts and accessories", at: "engine" },
    grounds: { basis: "memory", confidence: "low" },
    shares: { distributor: 22, pack: 20, rail: 22, "coil-per-plug": 22 },
    reach: { none: 0.97, random: 0.02, own: 0.01 },
    shows: 0.85,
    regimes: {
      coldStart: 0.35,
      coldIdle: 0.65,
      hotIdle: 0.8,
      cruise: 0.5,
      pull: 0.2,
      wet: 0.3,
      bumps: 0.1,
    },
    risks: [
      { finding: "distance", times: { "under-60": 0.5, "over-200": 1.5 } },
      { finding: "renewed", times: { plugs: 1.7, coils: 1.7, leads: 1.5, injectors: 1.7 } },
    ],
    signs: [
      {
        finding: "complaint.main",
        gives: { "shakes-at-idle": 0.64, "lamp-only": 0.01, shakes: 0.11 },
      },
      { finding: "onset", gives: { months: 0.5, weeks: 0.25, driving: 0.06 } },
      { finding: "trend", gives: { stable: 0.55, worse: 0.43 } },
      { finding: "regime.gear", gives: { "only-in-gear": 0.7, same: 0.27 } },
      { finding: "regime.air-conditioner", gives: { yes: 0.45 } },
      { finding: "regime.smooths", gives: { yes: 0.6, partly: 0.28, worse: 0.03 } },
      {
        finding: "regime.warmth",
        gives: { always: 0.75, "hot-restart": 0.01, "clears-at-once": 0.02 },
      },
      { finding: "regime.weather", gives: { "no-link": 0.91 } },
      { finding: "sound", gives: { knock: 0.1 } },
      { finding: "exhaust.paper", gives: { steady: 0.9, flutter: 0.08 } },
      { finding: "plug.look", gives: { tan: 0.85 } },
      { finding: "manifold-pressure", gives: { normal: 0.85 } },
      { finding: "spark", gives: { strong: 0.97 } },
      { finding: "compression", gives: { "in-limit": 0.98 } },
      { finding: "cranking", gives: { even: 0.97 } },
    ],
    firstCheck: "check.load-toggles",
    mend: "Compare gear and neutral; renew the mount or cure idle, accessory or converter.",
  },
];
