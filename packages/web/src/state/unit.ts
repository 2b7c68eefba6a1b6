// In which units does this person measure? Documents hold mm, N·m, km, kPa and °C; only what is shown and
// typed is in another. Kept on the device, not in the case.
import { convert, type Unit } from "@half-order/core";
import { computed, signal } from "@preact/signals";
import { inUnits } from "./figure.ts";

/** By quantity the units to choose from; the first is the one in which documents hold it. */
export const UNITS = {
  gap: ["mm", "thou"],
  torque: ["N·m", "lb·ft"],
  distance: ["km", "mi"],
  pressure: ["kPa", "bar", "psi"],
  temperature: ["°C", "°F"],
} as const satisfies Readonly<Record<string, readonly Unit[]>>;

export type Quantity = keyof typeof UNITS;
export type UnitChoice = { readonly [Q in Quantity]: (typeof UNITS)[Q][number] };

export const QUANTITIES = Object.keys(UNITS) as readonly Quantity[];

/** Decimals shown at most: as fine as the tool that measures it. */
const DECIMALS: Readonly<Partial<Record<Unit, number>>> = {
  mm: 2,
  thou: 1,
  N·m: 1,
  lb·ft: 1,
  bar: 2,
};

/** Under which name the device keeps what was chosen. */
const KEY = "half-order.units";
const chosen = signal<UnitChoice | undefined>(undefined);
/** False once the device has refused to keep the choice. */
export const areUnitsKept = signal(true);

/** The units of this person: what was chosen on this device, else what is usual in the region. */
export const units = computed<UnitChoice>(() => chosen.value ?? kept());

/** Chooses one of `UNITS[quantity]` from now on. */
export function chooseUnit(quantity: Quantity, unit: UnitChoice[Quantity]): void {
  const next = { ...units.value, [quantity]: unit };
  chosen.value = next;
  try {
    localStorage.setItem(KEY, JSON.stringify(next));
    areUnitsKept.value = true;
  } catch {
    // Said in the panel: the choice holds until the page is closed.
    areUnitsKept.value = false;
  }
}

/** What is usual where a language tag such as `en-GB` is spoken. */
export function usualUnits(locale: string): UnitChoice {
  // Where the tag names no region it is looked up, which keeps a small machine busy for a while.
  const region =
    /-([A-Z]{2})(?=-|$)/.exec(locale)?.[1] ?? new Intl.Locale(locale).maximize().region;
  const metric: UnitChoice = {
    gap: "mm",
    torque: "N·m",
    distance: "km",
    pressure: "bar",
    temperature: "°C",
  };
  const byMile = { ...metric, distance: "mi" } as const;
  if (region === "LR" || region === "MM") return byMile;
  if (region === "GB") return { ...byMile, pressure: "psi" };
  if (region !== "US") return metric;
  return { ...byMile, gap: "thou", torque: "lb·ft", pressure: "psi", temperature: "°F" };
}

/** A choice as it was kept; units that are not (or no longer) known are left to the region. */
export function readUnits(text: string | null, locale: string): UnitChoice {
  const usual = usualUnits(locale);
  if (text === null) return usual;
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    if (error instanceof SyntaxError) return usual;
    throw error;
  }
  if (typeof value !== "object" || value === null) return usual;
  const given = value as Readonly<Record<string, unknown>>;
  const valid = QUANTITIES.filter((q) => (UNITS[q] as readonly unknown[]).includes(given[q])).map(
    (q) => [q, given[q]],
  );
  return { ...usual, ...Object.fromEntries(valid) };
}

function kept(): UnitChoice {
  try {
    return readUnits(localStorage.getItem(KEY), navigator.language);
  } catch {
    // A device that keeps nothing still has a region.
    return usualUnits(navigator.language);
  }
}

/** A stored value in a unit of the person. */
export function toUnit(stored: number, quantity: Quantity, unit: Unit): number {
  return convert<Unit>(stored, UNITS[quantity][0], unit);
}

/** A value of the person as it is stored, without the dust of the arithmetic. */
export function fromUnit(value: number, quantity: Quantity, unit: Unit): number {
  return Number(convert<Unit>(value, unit, UNITS[quantity][0]).toPrecision(9));
}

/** "1.1 mm", "43 thou", in the signs of the locale; the browser's own unless given. */
export function sayQuantity(
  stored: number,
  quantity: Quantity,
  choice: UnitChoice = units.value,
  locale?: string,
): string {
  const unit = choice[quantity];
  return `${sayFigure(toUnit(stored, quantity, unit), unit, locale)}\u00a0${unit}`;
}

/** The same with so many digits that count, for what is worked out and not read off. */
export function sayAbout(stored: number, quantity: Quantity, digits: number): string {
  const unit = units.value[quantity];
  const figure = Number(toUnit(stored, quantity, unit).toPrecision(digits));
  return `${sayFigure(figure, unit)}\u00a0${unit}`;
}

const FIGURES =
  /(\d[\d,]*(?:\.\d+)?)(?:( to | and )(\d[\d,]*(?:\.\d+)?))? (mm|km|kPa|°C|N·m)(\/h)?(?![\p{L}/])/gu;

/**
 * A text of the tables with its figures in the units of a person: "Under 50 km" becomes "Under 31 mi". So many
 * digits count as did before, two at least; a figure that stays in its unit is only freed of digits that
 * no tool shows.
 */
export function textInUnits(text: string, choice: UnitChoice, locale?: string): string {
  const said = text.replace(
    FIGURES,
    (_, from: string, between: string | undefined, to: string, unit: Unit, hour?: string) => {
      const quantity = QUANTITIES.find((each) => UNITS[each][0] === unit) as Quantity;
      const wanted = choice[quantity];
      const say = (figure: string): string => restated(figure, quantity, wanted, locale);
      const figures = [say(from), ...(between === undefined ? [] : [say(to)])].join(between);
      const per = hour ? (wanted === "mi" ? "mph" : "km/h") : wanted;
      return `${figures} ${per}`;
    },
  );
  const far = choice.distance === "mi" ? said.replace(/\bkilometre/g, "mile") : said;
  return choice.gap === "thou" ? far.replace(/\bmillimetres/g, "thousandths of an inch") : far;
}

function restated(figure: string, quantity: Quantity, unit: Unit, locale?: string): string {
  const plain = figure.replaceAll(",", "");
  const isStored = unit === UNITS[quantity][0];
  if (isStored || quantity === "gap") {
    const isRough = (plain.split(".")[1]?.length ?? 0) <= (DECIMALS[unit] ?? 0);
    return isStored && isRough
      ? figure
      : sayFigure(toUnit(Number(plain), quantity, unit), unit, locale);
  }
  const digits = plain.replace(".", "").replace(/^0+|0+$/g, "").length;
  const value = toUnit(Number(plain), quantity, unit);
  const isRound =
    digits === 1 && value >= ROUND_FROM && isNear(Number(value.toPrecision(1)), value);
  const maximumSignificantDigits = isRound ? 1 : Math.max(2, digits);
  return new Intl.NumberFormat(locale, { maximumSignificantDigits }).format(value);
}

/** A round figure of hundreds or thousands stays one where that changes it by less than this part. */
const ROUND_FROM = 100;
const ROUND_WITHIN = 0.05;

function isNear(round: number, value: number): boolean {
  return Math.abs(round - value) < ROUND_WITHIN * value;
}

inUnits.value = (text) =>
  /\d|(?:kilo|milli)metre/.test(text) ? textInUnits(text, units.value) : text;

/** The figure alone, as it is written into a field. */
export function sayFigure(
  value: number,
  unit: Unit,
  locale?: string,
  roundingMode: "ceil" | "floor" | "halfExpand" = "halfExpand",
): string {
  const maximumFractionDigits = DECIMALS[unit] ?? 0;
  // Without the dust of the arithmetic, which would carry a bound one step on.
  const clean = Number(value.toPrecision(9));
  return new Intl.NumberFormat(locale, { maximumFractionDigits, roundingMode }).format(clean);
}

/**
 * A number as a person of that locale types it; `undefined` for anything else. A comma or point that
 * cannot part thousands there is taken for the decimal sign, whichever it is.
 */
export function parseFigure(text: string, locale?: string): number | undefined {
  const signs = signsOf(locale);
  const bare = [...bareOf(text)].map((sign) => signs.digits.get(sign) ?? sign).join("");
  const group = escaped(signs.group);
  // Some places part the thousands from the rest in twos.
  const isGrouped = new RegExp(`^-?\\d{1,3}(?:${group}\\d{2,3})*${group}\\d{3}(?!\\d)`).test(bare);
  const ungrouped = isGrouped ? bare.replaceAll(signs.group, "") : bare;
  const number = ungrouped.replace(signs.decimal, ".").replace(",", ".");
  return /^-?(?:\d+\.?\d*|\.\d+)$/.test(number) ? Number(number) : undefined;
}

/** Without blanks and marks of direction, with the plain minus and apostrophe of a keyboard. */
function bareOf(text: string): string {
  return text
    .replace(/[\s\u061c\u200e\u200f]/g, "")
    .replace("−", "-")
    .replace(/’/g, "'");
}

interface Signs {
  readonly decimal: string;
  readonly group: string;
  readonly digits: ReadonlyMap<string, string>;
}

/** How a locale writes numbers, as its own number format shows it. */
function signsOf(locale?: string): Signs {
  const parts = new Intl.NumberFormat(locale).formatToParts(1_234_567.5);
  const sign = (type: string): string =>
    bareOf(parts.find((part) => part.type === type)?.value ?? "");
  const plain = new Intl.NumberFormat(locale, { useGrouping: false });
  return {
    decimal: sign("decimal") || ".",
    // Blanks between thousands are gone before this is looked for.
    group: sign("group") || "'",
    digits: new Map(Array.from({ length: 10 }, (_, digit) => [plain.format(digit), `${digit}`])),
  };
}

function escaped(sign: string): string {
  return sign.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
}
