// What does this word of the trade mean? In plain English, without numbers to rest on.

export interface TermRow {
  /** Stays the same when the word changes. */
  readonly id: string;
  readonly word: string;
  /** Other forms in which a sentence may hold it: plural, short form, the other usual word. */
  readonly also?: readonly string[];
  /** One or two sentences for somebody who hears it for the first time. */
  readonly say: string;
}

export const TERMS: readonly TermRow[] = [
  {
    id: "misfire",
    word: "misfire",
    also: ["misfires", "misfiring"],
    say: "A cylinder that should push does not, or pushes weakly. The engine shakes and unburnt petrol goes into the exhaust.",
  },
  {
    id: "rough-idle",
    word: "rough idle",
    also: ["idle"],
    say: "Idle is the engine running on its own with no foot on the pedal. It is rough when you feel it shake.",
  },
  {
    id: "cylinder",
    word: "cylinder",
    also: ["cylinders"],
    say: "The round room in which a piston moves and the charge burns. Makers number them, and the numbers need not follow the row.",
  },
  {
    id: "bank",
    word: "bank",
    also: ["banks"],
    say: "One row of cylinders. An engine in a single row has one bank, a V or flat engine has two.",
  },
  {
    id: "firing-order",
    word: "firing order",
    say: "The sequence in which the cylinders burn, which is not the sequence in which they stand. It tells which two can share a coil.",
  },
  {
    id: "companion",
    word: "companion cylinders",
    also: ["companions", "companion", "companion cylinder"],
    say: "Two cylinders whose pistons rise together, one turn of the crank apart in firing. They often share one coil.",
  },
  {
    id: "neighbour",
    word: "neighbours",
    also: ["neighbour"],
    say: "Two cylinders side by side in the block, with a narrow strip of gasket between them. They need not have a coil in common.",
  },
  {
    id: "crank",
    word: "crank",
    also: ["crankshaft"],
    say: "The shaft that turns the up and down of the pistons into rotation. It goes round twice for one full cycle of a cylinder.",
  },
  {
    id: "cranking",
    word: "cranking",
    say: "Letting the starter turn the engine while it does not yet run by itself.",
  },
  {
    id: "camshaft",
    word: "camshaft",
    also: ["cam"],
    say: "The shaft that opens the valves. It turns at half the speed of the crank.",
  },
  {
    id: "wasted-spark",
    word: "wasted spark",
    say: "One coil fires two plugs at once: one spark lights the charge, the other jumps in a cylinder that is just pushing out its exhaust and does nothing.",
  },
  {
    id: "coil",
    word: "coil",
    also: ["coils", "ignition coil"],
    say: "It turns the battery's low voltage into the many thousand volts that jump the gap of a plug.",
  },
  {
    id: "primary",
    word: "primary",
    also: ["primary winding", "primary side"],
    say: "The side of a coil that the battery feeds and the control unit switches.",
  },
  {
    id: "secondary",
    word: "secondary",
    also: ["secondary winding", "secondary side"],
    say: "The side of a coil that makes the high voltage and leads it to the plug.",
  },
  {
    id: "rail",
    word: "coil rail",
    also: ["rail", "cassette"],
    say: "One long bar that sits on all plugs and holds all coils, with a single electrical connector. The coils in it cannot be exchanged one by one.",
  },
  {
    id: "pack",
    word: "coil pack",
    also: ["pack", "coil block"],
    say: "Several double coils in one block away from the plugs, with a cable from the block to each plug.",
  },
  {
    id: "distributor",
    word: "distributor",
    say: "A turning switch under a round cap that hands the spark of one coil to each plug in turn.",
  },
  {
    id: "rotor",
    word: "rotor",
    say: "The finger that turns inside a distributor cap and passes the spark to one tower after the other.",
  },
  {
    id: "tower",
    word: "tower",
    also: ["towers"],
    say: "The stub on a coil or a distributor cap into which a plug cable is pushed.",
  },
  {
    id: "leg",
    word: "leg",
    also: ["legs"],
    say: "The way of the spark from the coil to one plug: tower, cable or spring, boot and the plug itself.",
  },
  {
    id: "lead",
    word: "plug cable",
    also: ["plug lead", "plug cables", "plug leads"],
    say: "The thick, well insulated cable that takes the high voltage to a plug.",
  },
  {
    id: "boot",
    word: "boot",
    also: ["boots"],
    say: "The rubber sleeve that slips over the top of a plug and keeps the spark from jumping to the side.",
  },
  {
    id: "spring",
    word: "spring",
    also: ["springs"],
    say: "The small coil of wire inside a boot that carries the spark from the ignition coil to the top of the plug.",
  },
  {
    id: "well",
    word: "plug well",
    also: ["well", "wells", "plug wells"],
    say: "The deep hole in the cylinder head at whose bottom the plug sits. Oil or water that stands in it lets the spark escape.",
  },
  {
    id: "gap",
    word: "gap",
    also: ["gaps"],
    say: "The distance between the two electrodes of a plug that the spark must jump. It grows as the plug wears, and then it takes more voltage.",
  },
  {
    id: "electrode",
    word: "electrode",
    also: ["electrodes"],
    say: "One of the two metal ends between which the spark jumps: the centre pin and the bent strap over it.",
  },
  {
    id: "insulator",
    word: "insulator nose",
    also: ["porcelain", "insulator"],
    say: "The white ceramic round the centre pin of a plug. Its colour tells how the cylinder has been burning.",
  },
  {
    id: "fouled",
    word: "fouled",
    also: ["fouling"],
    say: "A plug so covered with soot, oil or petrol that the current creeps along the dirt instead of jumping as a spark.",
  },
  {
    id: "track",
    word: "burnt line",
    also: ["carbon track", "track"],
    say: "A thin black path that a straying spark has burnt into porcelain or rubber. It conducts, so the next spark takes it again.",
  },
  {
    id: "polarity",
    word: "polarity",
    say: "Which way the spark jumps. On a double coil one plug sparks from the pin to the strap and its companion the other way, so they wear at different ends.",
  },
  {
    id: "dwell",
    word: "dwell",
    say: "How long a coil is charged before it is let go. Too short, and the spark is weak.",
  },
  {
    id: "burn-time",
    word: "burn time",
    say: "How long a spark keeps burning after it has jumped. A short one hints at a wide gap or a weak coil, a long one at a small gap or dirt.",
  },
  {
    id: "trigger",
    word: "trigger wire",
    also: ["trigger"],
    say: "The wire by which the control unit tells a coil when to fire.",
  },
  {
    id: "driver",
    word: "driver",
    say: "The switch inside the control unit, or inside the coil, that lets the current into a coil and cuts it off.",
  },
  {
    id: "control-unit",
    word: "control unit",
    say: "The computer that decides when each plug sparks and how much petrol each cylinder gets.",
  },
  {
    id: "ground",
    word: "ground",
    also: ["grounds"],
    say: "The way of the current back to the battery, through the engine and the body. A loose one makes many things fail at once.",
  },
  {
    id: "lock-tab",
    word: "lock tab",
    say: "The little catch that keeps an electrical connector from working loose.",
  },
  {
    id: "injector",
    word: "injector",
    also: ["injectors"],
    say: "The small electric valve that sprays petrol to one cylinder.",
  },
  {
    id: "noid-light",
    word: "noid light",
    say: "A small lamp that is plugged in where an injector was. It blinks when the control unit is giving that injector its signal.",
  },
  {
    id: "balance-test",
    word: "balance test",
    say: "Each cylinder or injector is cut off or worked in turn, and one compares what changes. The one that changes nothing is the weak one.",
  },
  {
    id: "fuel-trim",
    word: "fuel trim",
    also: ["trim", "trims", "fuel trims"],
    say: "How much petrol the control unit adds or takes away against its own plan. Plus means that it saw too much air.",
  },
  {
    id: "lean",
    word: "lean",
    say: "Too little petrol for the air. The opposite is rich.",
  },
  {
    id: "rich",
    word: "rich",
    say: "Too much petrol for the air. It leaves black soot and smells.",
  },
  {
    id: "vacuum-leak",
    word: "vacuum leak",
    also: ["false air", "vacuum leaks"],
    say: "Air that slips into the engine behind the place where it is measured, through a crack or a loose hose. The engine then runs lean, most of all at idle.",
  },
  {
    id: "compression",
    word: "compression",
    say: "The pressure that the piston builds up before the spark. Without it even the best spark lights nothing.",
  },
  {
    id: "leak-down",
    word: "leak-down test",
    also: ["leak-down"],
    say: "Air is pressed into one closed cylinder, and one listens where it gets out: valve, rings or gasket.",
  },
  {
    id: "head-gasket",
    word: "head gasket",
    also: ["gasket"],
    say: "The thin seal between block and cylinder head. Where it gives way, two cylinders leak into one another, or coolant gets in.",
  },
  {
    id: "lamp",
    word: "engine lamp",
    also: ["warning lamp", "MIL", "lamp"],
    say: "The light in the dashboard that looks like a small engine. Steady means that a fault is stored, blinking that the catalyst is being harmed right now.",
  },
  {
    id: "code",
    word: "trouble code",
    also: ["trouble codes", "code", "codes"],
    say: "A letter and four signs that the control unit stores when something is out of line. It names what was noticed, not which part is broken.",
  },
  {
    id: "pending",
    word: "pending code",
    also: ["pending codes"],
    say: "A code after its first sighting, before the lamp comes on. It goes away again unless the fault is seen once more.",
  },
  {
    id: "freeze-frame",
    word: "freeze frame",
    say: "What speed, load and temperature the engine had in the moment when a code was stored. It tells when to look for the fault again.",
  },
  {
    id: "monitor",
    word: "monitor",
    also: ["monitors"],
    say: "A test that the control unit runs by itself while you drive. After codes are cleared it must run again before a repair counts as proved.",
  },
  {
    id: "drive-cycle",
    word: "drive cycle",
    also: ["drive cycles"],
    say: "A drive with a start and the kinds of driving that a self-test needs. Proof of a repair takes a few of them.",
  },
  {
    id: "misfire-counter",
    word: "misfire counter",
    also: ["misfire counts", "misfire count", "misfire counters"],
    say: "How often the control unit saw a cylinder miss, cylinder by cylinder. A reader can show it while the engine runs.",
  },
  {
    id: "code-reader",
    word: "code reader",
    say: "A small device that is plugged in under the dashboard and shows the stored codes, often live values too.",
  },
  {
    id: "catalyst",
    word: "catalyst",
    also: ["catalytic converter", "converter"],
    say: "The part of the exhaust that cleans the gas. Unburnt petrol burns inside it, and it can glow and melt.",
  },
  {
    id: "spark-tester",
    word: "spark tester",
    say: "A tool with a wide gap that is put in the place of a plug and shows whether a strong spark arrives.",
  },
  {
    id: "torque",
    word: "torque",
    say: "How hard a thread is turned tight. Too little lets gas past, too much strips the thread.",
  },
  {
    id: "deciban",
    word: "deciban",
    also: ["decibans"],
    say: "A step of belief that simply adds up. Ten of them make the odds ten times higher.",
  },
];
