// Does everybody read and type figures in their own units and signs, and is the same figure stored?
import { FINDINGS, type FindingRow } from "@half-order/core";
import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import {
  areUnitsKept,
  chooseUnit,
  fromUnit,
  parseFigure,
  QUANTITIES,
  readUnits,
  sayAbout,
  sayFigure,
  sayQuantity,
  textInUnits,
  toUnit,
  UNITS,
  units,
  usualUnits,
} from "../../packages/web/src/state/unit.ts";

const SEED = { seed: 20261125 };
const LOCALES = ["en-GB", "en-US", "de-DE", "fr-FR", "de-CH", "pl-PL", "ar-EG", "hi-IN", "fa-IR"];
const plain = (text: string): string => text.replace(/[\u00a0\u202f]/g, " ");

describe("a stored figure", () => {
  // NIST Special Publication 811 (2008), appendix B.8.
  it.each([
    [0.0254, "gap", "thou", 1],
    [1.355818, "torque", "lb·ft", 1],
    [1.609344, "distance", "mi", 1],
    [6.894757, "pressure", "psi", 1],
    [100, "pressure", "bar", 1],
    [100, "temperature", "°F", 212],
    [-40, "temperature", "°F", -40],
  ] as const)("%s of %s is in %s %s", (stored, quantity, unit, own) => {
    expect(toUnit(stored, quantity, unit)).toBeCloseTo(own, 6);
    expect(fromUnit(own, quantity, unit)).toBeCloseTo(stored, 6);
  });

  it("is stored as it is typed, without dust", () => {
    expect(fromUnit(44, "gap", "thou")).toBe(1.1176);
    expect(fromUnit(1.1, "gap", "mm")).toBe(1.1);
  });

  it("comes back from every unit", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...QUANTITIES),
        fc.double({ min: -100, max: 1e6, noNaN: true }),
        (quantity, stored) => {
          for (const unit of UNITS[quantity]) {
            const back = fromUnit(toUnit(stored, quantity, unit), quantity, unit);
            expect(Math.abs(back - stored)).toBeLessThanOrEqual(1e-6 * (1 + Math.abs(stored)));
          }
        },
      ),
      SEED,
    );
  });

  it("is said in the signs of the place", () => {
    expect(plain(sayQuantity(1.1176, "gap", usualUnits("en-US"), "en-US"))).toBe("44 thou");
    expect(plain(sayQuantity(1.1, "gap", usualUnits("de-DE"), "de-DE"))).toBe("1,1 mm");
    expect(plain(sayQuantity(120_500, "distance", usualUnits("fr-FR"), "fr-FR"))).toBe(
      "120 500 km",
    );
    expect(plain(sayQuantity(27.1, "torque", usualUnits("en-US"), "en-US"))).toBe("20 lb·ft");
  });
});

describe("a typed figure", () => {
  it.each([
    ["1.05", "en-GB", 1.05],
    ["1,05", "en-GB", 1.05],
    ["1,200", "en-GB", 1200],
    ["1,200.5", "en-GB", 1200.5],
    ["1.05", "de-DE", 1.05],
    ["1,05", "de-DE", 1.05],
    ["1.200", "de-DE", 1200],
    ["120 500", "fr-FR", 120_500],
    ["120’500", "de-CH", 120_500],
    [" 1.1 ", "en-GB", 1.1],
    ["−5", "en-GB", -5],
    [".9", "en-GB", 0.9],
    ["١٫٥", "ar-EG", 1.5],
    ["१.५", "hi-IN-u-nu-deva", 1.5],
    ["1,20,500", "hi-IN", 120_500],
  ] as const)("%s in %s is %s", (text, locale, value) => {
    expect(parseFigure(text, locale)).toBe(value);
  });

  it.each(["", " ", "1.1.1", "1 mm", "abc", "--1", "1e5", "Infinity", "1,2,3"])(
    "%j is none",
    (text) => {
      expect(parseFigure(text, "en-GB")).toBeUndefined();
    },
  );

  it("is read as it is written, everywhere", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...LOCALES),
        fc.double({ min: -50, max: 3e6, noNaN: true }),
        (locale, value) => {
          const read = parseFigure(sayFigure(value, "mm", locale), locale);
          expect(read).toBeCloseTo(value, 2);
        },
      ),
      { ...SEED, numRuns: 500 },
    );
  });

  it("never breaks", () => {
    fc.assert(
      fc.property(fc.constantFrom(...LOCALES), fc.string({ unit: "binary" }), (locale, text) => {
        const read = parseFigure(text, locale);
        expect(read === undefined || Number.isFinite(read)).toBe(true);
      }),
      SEED,
    );
  });
});

describe("the choice of units", () => {
  const kept = new Map<string, string>();
  beforeEach(() => {
    kept.clear();
    vi.stubGlobal("navigator", { language: "en-GB" });
    vi.stubGlobal("localStorage", {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, value: string) => kept.set(key, value),
    });
  });
  afterEach(() => vi.unstubAllGlobals());

  it("begins with what is usual in the region", () => {
    expect(usualUnits("en-US")).toMatchObject({ gap: "thou", torque: "lb·ft", distance: "mi" });
    expect(usualUnits("en-GB")).toMatchObject({ gap: "mm", distance: "mi", pressure: "psi" });
    // Unicode CLDR, measurement systems: roads are in miles in these two as well. From memory.
    for (const locale of ["en-LR", "my-MM"]) {
      expect(usualUnits(locale)).toMatchObject({ gap: "mm", torque: "N·m", distance: "mi" });
    }
    for (const locale of ["en-IE", "en-AU", "en-CA", "de-DE"]) {
      expect(usualUnits(locale)).toMatchObject({ gap: "mm", distance: "km" });
    }
    expect(usualUnits("es")).toMatchObject({ gap: "mm", distance: "km", temperature: "°C" });
  });

  it("is kept on the device, and read again", () => {
    chooseUnit("torque", "lb·ft");
    expect(units.value.torque).toBe("lb·ft");
    const [text = ""] = kept.values();
    expect(readUnits(text, "de-DE")).toEqual(units.value);
    expect(areUnitsKept.value).toBe(true);
  });

  it("holds for the page where the device keeps nothing, and says so", () => {
    vi.stubGlobal("localStorage", {
      setItem: () => {
        throw new DOMException("full", "QuotaExceededError");
      },
    });
    chooseUnit("gap", "thou");
    expect(units.value.gap).toBe("thou");
    expect(areUnitsKept.value).toBe(false);
    chooseUnit("gap", "mm");
  });

  it.each([null, "", "{", "[]", "null", '{"gap":"furlong"}', '{"torque":7}'])(
    "%j leaves the units to the region",
    (text) => {
      expect(readUnits(text, "de-DE")).toEqual(usualUnits("de-DE"));
    },
  );

  it("says what is worked out only as finely as it is known", () => {
    chooseUnit("distance", "km");
    expect(sayAbout(34_175, "distance", 2)).toMatch(/34.?000/);
  });
});

describe("a text of the tables", () => {
  const metric = usualUnits("de-DE");
  const american = usualUnits("en-US");
  const say = (text: string, choice = american): string => plain(textInUnits(text, choice, "en"));

  it("has its figures in the units of the person, with as many digits as it had", () => {
    expect(say("Under 50 km")).toBe("Under 31 mi");
    expect(say("60,000 to 120,000 km")).toBe("37,000 to 75,000 mi");
    expect(say("28 to 45 kPa, steady")).toBe("4.1 to 6.5 psi, steady");
    expect(say("up to about 90 km/h, three times")).toBe("up to about 56 mph, three times");
    // A round figure stays round where the difference is less than anybody measures: 621 miles.
    expect(say("Over 1 litre in 1,000 km")).toBe("Over 1 litre in 600 mi");
    expect(say("20,000 km")).toBe("12,000 mi");
    expect(say("Give millimetres, or choose.")).toBe("Give thousandths of an inch, or choose.");
    expect(say("A few gentle kilometres to a safe place")).toBe(
      "A few gentle miles to a safe place",
    );
  });

  it("is none of the first questions, which stand there before anybody's units are known", () => {
    const first = (FINDINGS as readonly FindingRow[]).filter((row) => row.first !== undefined);
    expect(first.length).toBeGreaterThan(3);
    for (const { ask, help = "", options } of first) {
      const texts = Object.values(options).flatMap(({ say, more = "" }) => [say, more]);
      for (const text of [ask, help, ...texts]) expect(textInUnits(text, american)).toBe(text);
    }
  });

  it("stays as it is where it is in these units already", () => {
    expect(say("80 to 90 km/h", metric)).toBe("80 to 90 km/h");
    expect(say("Give millimetres, or choose.", metric)).toBe("Give millimetres, or choose.");
    expect(say("A few gentle kilometres", metric)).toBe("A few gentle kilometres");
    expect(say("0.9 to 1.1 mm", metric)).toBe("0.9 to 1.1 mm");
  });

  it("has no more digits of a gap than a gauge shows", () => {
    expect(say("1.016 mm", metric)).toBe("1.02 mm");
    expect(say("1.016 mm")).toBe("40 thou");
  });

  it("leaves alone what only looks like a unit", () => {
    expect(say("4 kilometres, 2 mmHg, 3 kmh")).toBe("4 miles, 2 mmHg, 3 kmh");
  });
});
