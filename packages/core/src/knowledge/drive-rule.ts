// May one drive on? The decision table of the roadside: every rule that holds is told, and the most
// cautious one decides. The vehicle maker's manual and a technician at the car overrule all of it.
import type { DriveRuleRow, Grounds } from "./schema.ts";

const PRACTICE: Grounds = { basis: "common practice", confidence: "high" };
const HABIT: Grounds = { basis: "common practice", confidence: "medium" };
const ESTIMATE: Grounds = { basis: "memory", confidence: "low" };

export const DRIVE_RULES: readonly DriveRuleRow[] = [
  {
    id: "drive.fuel-seen",
    level: "stop-now",
    when: { finding: "alarm", is: ["fuel-seen"] },
    reason: "Petrol and its vapour catch fire from any spark or hot part.",
    lifts: "Nothing but the leak found and mended, the petrol dried up and aired.",
    never: ["start it again", "smoke or use a flame near it", "stay in the car"],
    cautions: ["fuel", "traffic"],
    grounds: PRACTICE,
  },
  {
    id: "drive.fuel-and-spark",
    level: "stop-now",
    when: {
      all: [
        { finding: "smell", is: ["petrol"] },
        {
          any: [
            { finding: "dark-look", is: ["yes"] },
            { finding: "sound", is: ["spark-tick"] },
          ],
        },
      ],
    },
    reason: "A spark jumps in the open while petrol is in the air.",
    lifts: "The smell traced to the tailpipe alone, or the leaking boot or cable mended.",
    never: ["start it again", "lean over the engine to look for the spark"],
    cautions: ["fuel", "high-voltage", "traffic"],
    grounds: HABIT,
  },
  {
    id: "drive.exhaust-hot",
    level: "stop-now",
    when: {
      any: [
        { finding: "exhaust.glowing", is: ["yes"] },
        { finding: "smell", is: ["scorch"] },
        { finding: "alarm", is: ["smoke-beneath"] },
      ],
    },
    reason:
      "Unburnt mixture burns in the catalyst. It gets hot enough to light grass, undercoating and carpet.",
    lifts: "Cold again, and the smell or smoke found to come from something harmless.",
    never: ["park over dry grass", "let it idle to cool down", "reach underneath"],
    cautions: ["glowing-exhaust", "hot-parts", "traffic"],
    grounds: PRACTICE,
  },
  {
    id: "drive.burnt-insulation",
    level: "stop-now",
    when: { finding: "smell", is: ["burnt-insulation"] },
    reason: "A wire or a coil is burning its insulation, and may set fire to what is next to it.",
    lifts: "The hot wire found and mended.",
    never: ["renew a fuse with a bigger one", "open the bonnet wide when smoke comes out of it"],
    cautions: ["battery", "traffic"],
    grounds: { basis: "memory", confidence: "medium" },
  },
  {
    id: "drive.stray-voltage",
    level: "stop-now",
    when: { finding: "electrics-wild", is: ["yes"] },
    reason: "Ignition voltage escapes into the wiring. Driving on can destroy electronics.",
    lifts:
      "The leak of voltage found and mended, or the gauges shown to have a fault of their own.",
    never: ["touch coils, cables or boots while it runs"],
    cautions: ["stray-voltage", "high-voltage", "traffic"],
    grounds: HABIT,
  },
  {
    id: "drive.overheats",
    level: "stop-now",
    when: {
      any: [
        { finding: "alarm", is: ["hot-gauge"] },
        { finding: "smoke", is: ["white"] },
      ],
    },
    reason: "Without coolant the head warps in minutes, and coolant in a cylinder can break a rod.",
    lifts: "Cold again, coolant full, no leak, and the smoke gone at the next start.",
    never: [
      "open the radiator hot",
      "crank again if it stopped with a thump",
      "pour in cold water",
    ],
    cautions: ["hot-parts", "no-cranking", "traffic"],
    grounds: PRACTICE,
  },
  {
    id: "drive.mechanical",
    level: "stop-now",
    when: {
      any: [
        { finding: "alarm", is: ["metal-noise", "plug-out", "oil-lamp"] },
        { finding: "sound", is: ["knock"] },
      ],
    },
    reason: "Something is breaking, or the oil is not reaching it. Every turn makes it dearer.",
    lifts: "Oil pressure measured, and the noise found to come from outside the engine.",
    never: ["rev it to hear better", "start it once more to show somebody"],
    cautions: ["moving-parts", "hot-parts", "traffic"],
    grounds: PRACTICE,
  },
  {
    id: "drive.thump",
    level: "stop-now",
    when: { finding: "alarm", is: ["thump"] },
    reason: "A thump and a stop mean liquid or a broken part in a cylinder.",
    lifts: "All plugs out, turned over by hand, and nothing found.",
    never: ["crank it", "push-start it"],
    cautions: ["no-cranking", "traffic"],
    grounds: PRACTICE,
  },
  {
    id: "drive.blinks-and-rough",
    level: "stop-now",
    when: {
      all: [
        { finding: "lamp", is: ["blinking"] },
        { finding: "complaint.severity", is: ["clear", "barely-drivable"] },
      ],
    },
    reason:
      "The lamp blinks while the catalyst is being ruined, and the engine is rough enough to do it fast.",
    lifts: "One restart after a pause: it runs clean, and the lamp stays steady at light throttle.",
    never: ["keep up speed with more throttle", "let it idle over dry grass"],
    cautions: ["blinking-lamp", "traffic"],
    grounds: PRACTICE,
  },
  {
    id: "drive.blinks",
    level: "do-not-drive",
    when: { finding: "lamp", is: ["blinking"] },
    reason: "The lamp blinks for as long as the misfire can ruin the catalyst.",
    lifts:
      "It blinks only when pulling hard, and no longer at light throttle: then the answer is that it blinked, and is now steady or out.",
    never: ["wait for the lamp to calm down while driving on"],
    cautions: ["blinking-lamp"],
    grounds: PRACTICE,
  },
  {
    id: "drive.half-missing",
    level: "do-not-drive",
    when: { missing: { atLeast: 1, share: 0.5 } },
    reason:
      "Half of the mixture goes unburnt into the exhaust. A third was enough to heat a catalyst by some 300 degrees in ten seconds.",
    lifts: "It fires on all cylinders again, by a cancel test or by the counts of a short idle.",
    never: ["drive on at full throttle to make up for the lost power"],
    cautions: ["glowing-exhaust"],
    grounds: HABIT,
  },
  {
    id: "drive.two-missing",
    level: "do-not-drive",
    when: { missing: { atLeast: 2 } },
    reason: "Two missing cylinders overheat the exhaust and wash the oil off their bores.",
    lifts: "It fires on all cylinders again, by a cancel test or by the counts of a short idle.",
    never: ["idle it to keep the battery up"],
    cautions: ["glowing-exhaust"],
    grounds: HABIT,
  },
  {
    id: "drive.cuts-out",
    level: "do-not-drive",
    when: {
      any: [
        { finding: "complaint.main", is: ["stalls", "cuts-out"] },
        { finding: "tachometer", is: ["yes"] },
      ],
    },
    reason: "When it stops in traffic, the help for steering and brakes goes with it.",
    lifts: "It stalls only at idle, standing, and never while rolling.",
    never: ["take it where it must not stop: junctions, crossings, fast roads"],
    cautions: ["traffic"],
    grounds: PRACTICE,
  },
  {
    id: "drive.petrol-smell",
    level: "do-not-drive",
    when: { finding: "smell", is: ["petrol"] },
    reason: "It may be the exhaust of the misfire, and it may be a leak. Only a look tells.",
    lifts:
      "Engine off and cool: no wet spot anywhere, and the smell comes from the tailpipe alone.",
    never: ["look for the leak with a flame or with the engine running"],
    cautions: ["fuel"],
    restsUntil: "alarm",
    grounds: HABIT,
  },
  {
    id: "drive.injector-open",
    level: "do-not-drive",
    fuelling: "injection",
    when: {
      any: [
        { finding: "smell", is: ["petrol-in-oil"] },
        { finding: "injector.lamp", is: ["steady"] },
        {
          all: [
            { finding: "plug.look", is: ["wet-petrol", "wet"] },
            { finding: "injector.balance", is: ["large"] },
          ],
        },
      ],
    },
    reason:
      "An injector that stays open fills its cylinder, thins the oil and can lock the engine.",
    lifts: "Plug out and dry, injector found tight, oil changed.",
    never: ["start or crank it", "drive on the thinned oil"],
    cautions: ["no-cranking", "fuel"],
    grounds: PRACTICE,
  },
  {
    id: "drive.carburettor-floods",
    level: "do-not-drive",
    fuelling: "carburettor",
    when: {
      any: [
        { finding: "carburettor.look", is: ["dripping"] },
        { finding: "smell", is: ["petrol-in-oil"] },
      ],
    },
    reason: "Petrol that runs over can catch fire, thin the oil and lock the engine.",
    lifts: "Carburettor and fuel pump found tight, and the oil changed where it smells of petrol.",
    never: ["start or crank it", "drive on the thinned oil"],
    cautions: ["fuel", "no-cranking"],
    grounds: HABIT,
  },
  {
    id: "drive.timing",
    level: "do-not-drive",
    when: {
      any: [
        {
          all: [
            { finding: "work", is: ["belt"] },
            { finding: "onset", is: ["after-work"] },
          ],
        },
        { finding: "codes", is: ["timing"] },
        { finding: "cranking", is: ["fast"] },
      ],
    },
    reason: "A belt or chain that is a tooth off lets valves meet pistons.",
    lifts: "The timing marks looked at and found in place.",
    never: ["start it again"],
    cautions: ["moving-parts"],
    grounds: PRACTICE,
  },
  {
    id: "drive.coolant-inside",
    level: "do-not-drive",
    when: {
      any: [
        { finding: "coolant", is: ["overheated"] },
        { finding: "leak.sound", is: ["radiator"] },
        {
          all: [
            { finding: "plug.look", is: ["steam-clean"] },
            { finding: "coolant", is: ["loss"] },
          ],
        },
        {
          all: [
            { finding: "smell", is: ["sweet"] },
            { finding: "coolant", is: ["loss"] },
          ],
        },
      ],
    },
    reason: "Coolant goes where it must not. It can lock a cylinder or leave the head dry.",
    lifts: "The cooling system holds pressure, and the level stays.",
    never: ["open the radiator hot", "top it up and drive on as if nothing were"],
    cautions: ["hot-parts", "no-cranking"],
    grounds: HABIT,
  },
  {
    id: "drive.blinked-and-misses",
    level: "do-not-drive",
    when: {
      all: [
        { finding: "lamp", is: ["blinked-then-steady", "blinked-then-out"] },
        { finding: "regime.worst", is: ["cruise", "all"] },
      ],
    },
    reason:
      "It blinked, and it misses at light throttle too: no way of driving spares the catalyst.",
    lifts: "At light throttle it runs evenly, and the lamp does not blink.",
    never: ["wait for the lamp to calm down while driving on"],
    cautions: ["blinking-lamp"],
    grounds: HABIT,
  },
  {
    id: "drive.blinked",
    level: "to-safety-only",
    when: { finding: "lamp", is: ["blinked-then-steady", "blinked-then-out"] },
    reason:
      "Under load the misfire was bad enough for the catalyst; with little throttle it is milder.",
    lifts: "Mended, and no blinking at idle or at light throttle.",
    never: ["take it on a motorway, up hills under load or with a trailer"],
    cautions: ["blinking-lamp"],
    grounds: PRACTICE,
  },
  {
    id: "drive.third-missing",
    level: "to-safety-only",
    when: {
      all: [
        { missing: { atLeast: 1, share: 1 / 3 } },
        {
          any: [
            { finding: "complaint.severity", is: ["clear", "barely-drivable"] },
            { finding: "cancel", is: ["no-drop"] },
          ],
        },
      ],
    },
    reason: "A third of the mixture unburnt heated a catalyst by some 300 degrees in ten seconds.",
    lifts: "The cylinder fires again.",
    never: ["use full throttle"],
    cautions: ["glowing-exhaust"],
    grounds: HABIT,
  },
  {
    id: "drive.one-dead",
    level: "to-safety-only",
    when: { finding: "cancel", is: ["no-drop"] },
    reason: "A cylinder that is dead all the time sends its fuel into the exhaust and its bore.",
    lifts: "The engine slows when that cylinder is switched off.",
    never: ["use full throttle"],
    cautions: ["glowing-exhaust"],
    grounds: HABIT,
  },
  {
    id: "drive.barely",
    level: "to-safety-only",
    when: { finding: "complaint.severity", is: ["barely-drivable"] },
    reason: "It will not pull away when it has to.",
    lifts: "It pulls evenly again.",
    never: ["turn across traffic or overtake with it"],
    cautions: ["traffic"],
    grounds: HABIT,
  },
  {
    id: "drive.feels-dead",
    level: "to-safety-only",
    when: { finding: "complaint.dead-cylinders", is: ["two", "more"] },
    reason: "If two cylinders are dead it should be towed; the feel alone counts badly.",
    lifts: "It runs evenly again, and codes, counts or a cancel test name no cylinder.",
    never: ["use full throttle"],
    cautions: ["glowing-exhaust"],
    grounds: ESTIMATE,
  },
  {
    id: "drive.brake-servo",
    level: "to-safety-only",
    when: { finding: "brake-pedal", is: ["yes"] },
    reason: "The brake servo may leak air, and then the pedal gets hard when it is needed.",
    lifts: "The servo holds vacuum: the pedal stays light for two strokes after the engine is off.",
    never: ["pull away before the brake is tried, standing and at walking pace"],
    cautions: ["traffic"],
    grounds: ESTIMATE,
  },
  {
    id: "drive.backfires",
    level: "to-safety-only",
    when: { finding: "backfire", is: ["intake", "exhaust"] },
    reason: "Mixture goes off in the pipes. It splits hoses, boxes and the catalyst.",
    lifts: "No bang on a drive under the same conditions.",
    never: ["look into the intake while somebody cranks"],
    cautions: ["fuel"],
    grounds: ESTIMATE,
  },
  {
    id: "drive.lamp-steady",
    level: "drive-gently",
    when: { finding: "lamp", is: ["steady"] },
    reason: "A steady lamp has stored a fault that is not ruining the catalyst at this moment.",
    lifts: "Mended, and the lamp out by itself after three clean drives.",
    never: ["clear the codes before they are written down"],
    cautions: ["blinking-lamp"],
    grounds: PRACTICE,
  },
  {
    id: "drive.rough",
    level: "drive-gently",
    when: { finding: "complaint.severity", is: ["clear"] },
    reason: "What is clearly felt is a misfire often enough to do harm in time.",
    lifts: "It runs evenly.",
    never: ["put it off for weeks"],
    cautions: ["blinking-lamp"],
    grounds: HABIT,
  },
  {
    id: "drive.one-named",
    level: "drive-gently",
    when: { missing: { atLeast: 1 } },
    reason: "A code or the counts name a cylinder that misses.",
    lifts: "Mended, and no count on a drive under the same conditions.",
    never: ["clear the codes before they are written down"],
    cautions: ["blinking-lamp"],
    grounds: HABIT,
  },
  {
    id: "drive.one-feels-dead",
    level: "drive-gently",
    when: { finding: "complaint.dead-cylinders", is: ["one"] },
    reason: "A cylinder that does not fire sends its petrol unburnt into the exhaust.",
    lifts: "A cancel test or the counts of a short idle show that every cylinder works.",
    never: ["use full throttle"],
    cautions: ["glowing-exhaust"],
    grounds: HABIT,
  },
  {
    id: "drive.coolant-low",
    level: "drive-gently",
    when: {
      any: [
        { finding: "coolant", is: ["loss"] },
        { finding: "smell", is: ["sweet"] },
      ],
    },
    reason: "Coolant is lost somewhere. It does no harm until there is too little of it.",
    lifts: "The leak found and mended.",
    never: ["open the radiator hot", "drive without looking at the level, cold, before each start"],
    cautions: ["hot-parts"],
    grounds: HABIT,
  },
  {
    id: "drive.open-spark",
    level: "drive-gently",
    when: {
      any: [
        { finding: "dark-look", is: ["yes"] },
        { finding: "sound", is: ["spark-tick"] },
      ],
    },
    reason: "The spark finds a way outside. It burns its path deeper with every kilometre.",
    lifts: "Dry and dark, nothing flickers any more.",
    never: ["touch coils, cables or boots while it runs"],
    cautions: ["high-voltage"],
    grounds: HABIT,
  },
  {
    id: "drive.rich",
    level: "drive-gently",
    when: {
      any: [
        { finding: "smoke", is: ["black"] },
        { finding: "smell", is: ["rotten-egg"] },
      ],
    },
    reason: "Too much fuel reaches the catalyst, which gets hot on it.",
    lifts: "The exhaust is clear and the mixture reads normal.",
    never: ["park over dry grass"],
    cautions: ["glowing-exhaust"],
    grounds: ESTIMATE,
  },
  {
    id: "drive.lamp-off",
    level: "normal-care",
    when: { finding: "lamp", is: ["off"] },
    reason: "No lamp: the misfire is too rare, or too new, for the monitor.",
    lifts: "The lamp comes on, or the engine gets clearly rough.",
    never: ["take a dark lamp for proof before it was seen to light with the ignition on"],
    cautions: ["blinking-lamp"],
    grounds: PRACTICE,
  },
];
