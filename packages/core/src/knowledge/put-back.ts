// Between the last bolt and the first start: what is put back, in which order, and what is looked at twice.
import type { PutBackRow } from "./schema.ts";

/** Ids of the steps for a cover that the profile says lies over the plugs, such as an inlet manifold. */
export const COVER_PUT_BACK: readonly string[] = ["cover.bolt", "intake.hose"];

export const PUT_BACK = [
  {
    id: "well.clean",
    say: "Blow it clean with glasses on, or wipe it: the plug well must be dry. What lies in it falls into the cylinder or leads the spark away.",
    cautions: ["hot-parts"],
    order: 10,
  },
  {
    id: "head.bolt",
    say: "Tighten the head bolts with a torque wrench, in the manual's order and stages, and take new ones where it says so. Never by feel.",
    order: 15,
  },
  {
    id: "injector.seal",
    say: "New seals on every injector that was out, oiled; press it home straight and refit its clip.",
    cautions: ["fuel", "fuel-pressure"],
    fuelling: "injection",
    order: 20,
  },
  {
    id: "plug.gap",
    say: "Measure the gap of every plug, new ones too: {gap}. Bend the side electrode only, and leave fine-metal tips alone.",
    without:
      "Measure the gap of every plug, new ones too, against the vehicle maker's manual. Leave fine-metal tips alone.",
    order: 30,
  },
  {
    id: "plug.by-hand",
    say: "Turn each plug in by hand, with a length of hose or the bare socket. It must run freely to its seat; if it binds, take it out and start again.",
    cautions: ["hot-parts"],
    order: 40,
  },
  {
    id: "plug.torque",
    say: "Tighten each plug to {torque}, threads dry and engine cold, unless the plug's own sheet says otherwise.",
    without:
      "Tighten each plug with a torque wrench, engine cold. Take the figure from the vehicle maker's manual.",
    lacking: {
      tool: "torque wrench",
      say: "No torque wrench at hand: from finger-tight, engine cold, turn each plug as far as its box or the vehicle maker's manual says. Usual is half a turn for a new ring seat, a twelfth for a used one, a sixteenth for a tapered seat.",
    },
    cautions: ["hot-parts"],
    order: 50,
  },
  {
    id: "belt.mark",
    say: "Turn the engine over twice by hand with a wrench. All timing marks must meet again before the starter is touched.",
    cautions: ["moving-parts"],
    order: 60,
  },
  {
    id: "sensor.seat",
    say: "Turn each sensor that was out of the exhaust in by hand first, then tighten it to the manual's torque. Its wire touches nothing hot.",
    cautions: ["hot-parts"],
    fuelling: "injection",
    order: 62,
  },
  {
    id: "cover.bolt",
    say: "Fit whatever cover, manifold or housing was off with its seal straight. Its bolts go in evenly, in the manual's order and to its torque.",
    order: 65,
  },
  {
    id: "boot.spring",
    say: "Look into every boot: the spring is in it, straight, and as long as in the others.",
    suits: ["pack", "rail", "hybrid", "coil-per-plug"],
    order: 70,
  },
  {
    id: "boot.home",
    say: "Press every boot or cable fully onto its plug. It grips, and all sit at the same height.",
    cautions: ["high-voltage"],
    order: 80,
  },
  {
    id: "breaker.gap",
    say: "Smear the cam thinly with its grease. Set the contact gap by the manual, with the heel on the top of a cam, before the cap goes on.",
    suits: ["distributor"],
    cautions: ["high-voltage"],
    order: 83,
  },
  {
    id: "distributor.cap",
    say: "Seat the distributor cap in its notch and close all its clips or screws.",
    suits: ["distributor"],
    cautions: ["high-voltage"],
    order: 85,
  },
  {
    id: "coil.bolt",
    say: "Fit all bolts of the coils, evenly and to the manual's torque. One of them may carry the ground.",
    lacking: {
      tool: "torque wrench",
      say: "Fit all bolts of the coils, evenly and just snug with a short handle: the threads below are soft. One of them may carry the ground.",
    },
    order: 90,
  },
  {
    id: "lead.order",
    say: "Follow every cable or coil plug to its cylinder and compare with the firing order.",
    cautions: ["high-voltage"],
    order: 100,
  },
  {
    id: "intake.hose",
    say: "Push on every intake and vacuum hose and tighten its clamp. A hose left off makes a misfire of its own.",
    order: 110,
  },
  {
    id: "ground.tight",
    say: "Bolt every ground strap back to bare, clean metal.",
    cautions: ["battery"],
    order: 120,
  },
  {
    id: "connector.click",
    say: "Push each connector on until it clicks. Pull at it: it stays.",
    cautions: ["high-voltage"],
    order: 130,
  },
  {
    id: "connector.lock",
    say: "Only then close its lock. A lock that will not close tells that the connector is not home; never force it.",
    order: 140,
  },
  {
    id: "fuel.back",
    say: "Undo what cut fuel or spark: fuses and relays back in their own places, every injector plug and coil plug home until it clicks.",
    carburettor:
      "Undo what cut fuel or spark: fuses back in their own places, every fuel hose on and clamped, every wire of coil and distributor on.",
    cautions: ["fuel"],
    order: 145,
  },
  {
    id: "coolant.level",
    say: "Fill and bleed the coolant as the manual says, engine cold.",
    cautions: ["hot-parts"],
    order: 150,
  },
  {
    id: "oil.level",
    say: "Read the oil level and smell the dipstick. Where petrol got into it, change the oil before the start.",
    order: 160,
  },
  {
    id: "cap.closed",
    say: "Close what was opened for a look: oil cap, dipstick, coolant tank.",
    cautions: ["hot-parts"],
    order: 165,
  },
  {
    id: "tools.counted",
    say: "Count tools, rags, bolts and caps. Look into the wells and along the belts for what was left behind.",
    cautions: ["moving-parts"],
    order: 170,
  },
  {
    id: "wheel.bolt",
    say: "Tighten the bolts of each wheel that was off crosswise to the manual's torque, with the car on its wheels, and again after 50 km.",
    cautions: ["lifting"],
    order: 175,
  },
  {
    id: "battery.back",
    say: "Connect the battery, positive pole first, negative last. Clock, radio and windows may have to be set again.",
    cautions: ["battery"],
    order: 180,
  },
  {
    id: "fuel.leak-check",
    say: "Ignition on for a few seconds, twice, without starting. Then look and smell along every fuel joint: dry, or do not start.",
    carburettor:
      "Coil lead off and grounded, crank for some seconds to fill the carburettor. Then look and smell along every fuel joint: dry, or do not start. Lead on again.",
    cautions: ["fuel", "fuel-pressure"],
    order: 190,
  },
  {
    id: "codes.clear",
    say: "Write down all codes, counts and the freeze frame, then clear them once. Only what comes back counts.",
    lacking: {
      tool: "code reader",
      say: "No code reader at hand: leave the battery on, and have the codes read and cleared before one of them is believed.",
    },
    throughPort: true,
    order: 200,
  },
  {
    id: "first-start",
    say: "Start it in the open. It may idle roughly for some minutes while it learns anew. A blinking lamp, a knock or a smell of petrol: off at once.",
    carburettor:
      "Start it in the open, the air filter on. A knock, or a smell of petrol: off at once.",
    cautions: ["exhaust-gas", "moving-parts", "hot-parts"],
    order: 210,
  },
  {
    id: "timing.base",
    say: "Engine warm: first read the dwell, then set the base timing, both by the manual and in this order. Each change of the dwell moves the timing.",
    suits: ["distributor"],
    cautions: ["high-voltage", "moving-parts", "exhaust-gas"],
    order: 220,
  },
] as const satisfies readonly PutBackRow[];
