// Findings and checks. The six first questions come at once, the rows of all others and the checks are filled
// in when they are needed: few who are at the roadside ever need them all.
import type { CheckRow, FindingRow, Knowledge } from "@half-order/core";
import address from "#packed/asked.json?url";
import laterAddress from "#packed/later.json?url";
import { fetched } from "./fetched.ts";
import { fromOutline, type Outline } from "./pack.ts";

export interface Later {
  readonly findings: readonly FindingRow[];
  readonly checks: readonly CheckRow[];
  readonly others: Partial<Knowledge>;
}

const rows = await fetched<{ readonly findings: readonly (FindingRow | Outline)[] }>(address);

export const FINDINGS: readonly FindingRow[] = rows.findings.map((row) =>
  "id" in row ? row : fromOutline(row),
);

const checks: CheckRow[] = [];

/** None until they are filled in. */
export const CHECKS: readonly CheckRow[] = checks;

let later: Promise<Later> | undefined;
const listeners: ((file: Later) => void)[] = [];

/** Calls with what comes later, as soon as somebody has asked for it. */
export function onFilled(listener: (file: Later) => void): void {
  listeners.push(listener);
  // What was fetched before; who fetched it has heard of a failure.
  later?.then(listener, () => undefined);
}

/** Fills in the findings and checks that come later, once; rejects when they cannot be had now. */
export function fillFindings(): Promise<Later> {
  later ??= fetched<Later>(laterAddress).then((file) => {
    const known = new Map(FINDINGS.map((row) => [row.id, row]));
    for (const row of file.findings) Object.assign(known.get(row.id) ?? {}, row);
    checks.push(...file.checks);
    for (const hear of listeners) hear(file);
    return file;
  });
  later.catch(() => {
    later = undefined;
  });
  return later;
}
