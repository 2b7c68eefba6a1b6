// The first pages kept some of a case beside it: where does that go? Into the case, once.
import type { PlugCourse } from "@half-order/core";
import type { ProvingDrive, SpentTime, WorkBook } from "@half-order/core/wire";
import { joinCase, openCase } from "./case.ts";
import { lookAtShelf, reshelve } from "./keep.ts";
import { type CaseDoc, type KeptCase, keptCase } from "./store.ts";

/** Something that was kept beside a case, under this key and the id of the case. */
interface Beside {
  readonly key: string;
  /** The document with it; the same where there is nothing to take in. */
  readonly into: (doc: CaseDoc, text: string | null) => CaseDoc;
}

const BESIDE: readonly Beside[] = [
  {
    key: "half-order.work.",
    into: (doc, text) => (doc.work ? doc : { ...doc, work: readOld(text) ?? {} }),
  },
  { key: "half-order.course.", into: withOldCourse },
];

/** Moves what is left of it. Never rejects: what could not be moved stays for the next time. */
export async function takeInOldWork(): Promise<void> {
  for (const { key, into } of BESIDE) {
    for (const old of keysWith(key)) {
      const id = old.slice(key.length);
      try {
        const text = localStorage.getItem(old);
        await takeIn(id, (doc) => into(doc, text));
        const kept = await keptCase(id);
        const isGone = !kept && openCase.peek()?.id !== id;
        if (isGone || (kept && into(kept.doc, text) === kept.doc)) localStorage.removeItem(old);
      } catch {
        // The device does not let the page look at its cases, which the page says by itself.
        return;
      }
    }
  }
}

async function takeIn(id: string, into: (doc: CaseDoc) => CaseDoc): Promise<void> {
  const withOld = (of: KeptCase): KeptCase => ({ ...of, doc: into(of.doc) });
  const mine = openCase.peek();
  if (mine?.id === id) {
    if (into(mine.doc) !== mine.doc) await joinCase(mine, withOld(mine));
    // By then it is written.
    return lookAtShelf();
  }
  const kept = await keptCase(id);
  if (kept && into(kept.doc) !== kept.doc) await reshelve(kept, withOld(kept));
}

function keysWith(key: string): readonly string[] {
  try {
    return Object.keys(localStorage).filter((each) => each.startsWith(key));
  } catch {
    // A device that lets nobody look has kept nothing.
    return [];
  }
}

/** As the first pages wrote it. */
interface OldWork {
  readonly open: readonly string[];
  readonly spent: readonly SpentTime[];
  readonly ticks: Readonly<Record<string, readonly string[]>>;
  readonly drives: Readonly<Record<string, readonly Omit<ProvingDrive, "of" | "when">[]>>;
}

/** The book that it makes; `undefined` for what is none. */
export function readOld(text: string | null): WorkBook | undefined {
  const old = parsed(text);
  if (!isOld(old)) return undefined;
  return {
    open: old.open,
    spent: old.spent,
    ticks: Object.entries(old.ticks).flatMap(([list, lines]) =>
      lines.map((line) => ({ list, line })),
    ),
    drives: Object.entries(old.drives).flatMap(([of, drives]) =>
      // Their moments were not kept: their number tells them apart.
      drives.map((drive, i) => ({ of, ...drive, when: `${of} ${i + 1}` })),
    ),
  };
}

/** By the day of a record, what was said of the plugs that went in; each with the record that has none yet. */
function withOldCourse(doc: CaseDoc, text: string | null): CaseDoc {
  const said = (parsed(text) ?? {}) as Readonly<Record<string, unknown>>;
  const records = doc.records?.map((record) => {
    const course = record.course ? undefined : oldCourse(said[record.when], record.when);
    return course ? { ...record, course } : record;
  });
  const isNew = records?.some((record, i) => record !== doc.records?.[i]) ?? false;
  return records && isNew ? { ...doc, records } : doc;
}

/** Of it what a record may hold; `undefined` where that is nothing. */
function oldCourse(value: unknown, when: string): PlugCourse | undefined {
  const { wentIn, kmPerYear, fittedOn } = (value ?? {}) as Readonly<Record<string, unknown>>;
  const isPace = typeof kmPerYear === "number" && kmPerYear >= 1;
  const isDay = typeof fittedOn === "string" && /^\d{4}-\d\d-\d\d$/.test(fittedOn);
  const course: PlugCourse = {
    ...(wentIn === "new" || wentIn === "same" ? { wentIn } : {}),
    ...(isPace ? { kmPerYear } : {}),
    ...(isDay && fittedOn <= when ? { fittedOn } : {}),
  };
  return Object.keys(course).length > 0 ? course : undefined;
}

function parsed(text: string | null): unknown {
  try {
    return JSON.parse(text ?? "null");
  } catch {
    // What was cut off is nothing.
    return undefined;
  }
}

/** Only this page wrote it: enough to know that it is one. */
function isOld(value: unknown): value is OldWork {
  if (typeof value !== "object" || value === null) return false;
  const { open, spent, ticks, drives } = value as Partial<Record<keyof OldWork, unknown>>;
  return (
    Array.isArray(open) &&
    Array.isArray(spent) &&
    typeof ticks === "object" &&
    ticks !== null &&
    typeof drives === "object" &&
    drives !== null
  );
}
