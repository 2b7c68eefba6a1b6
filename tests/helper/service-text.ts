// The prose of the tables about driving on, putting back, proving and wear, with its address.
import { DRIVE_RULES, LIMP_HOME, PUT_BACK } from "../../packages/core/src/index.ts";
import { DRIVE_LEVEL_ROWS } from "../../packages/core/src/knowledge/drive-level.ts";
import { PROOF_SIGNS, PROOF_STEPS } from "../../packages/core/src/knowledge/proof-drive.ts";
import type { PutBackRow } from "../../packages/core/src/knowledge/schema.ts";
import { WEAR_PATTERNS } from "../../packages/core/src/knowledge/wear-pattern.ts";
import type { Prose } from "./knowledge-text.ts";

export function* serviceProse(): Generator<Prose> {
  for (const { id, reason, lifts, never } of DRIVE_RULES) {
    yield* numbered(id, [reason, lifts, ...never]);
  }
  for (const { level, say, steps } of DRIVE_LEVEL_ROWS) yield* numbered(level, [say, ...steps]);
  const { steps, fuelCut, never, towInstead, afterwards } = LIMP_HOME;
  const limp = [...steps, ...fuelCut.steps, ...fuelCut.never, ...never, ...towInstead];
  yield* numbered("limp home", [...limp, ...afterwards]);
  const putBack: readonly PutBackRow[] = PUT_BACK;
  for (const { id, say, without, carburettor, lacking } of putBack) {
    yield* numbered(`put back ${id}`, [
      say,
      ...[without, carburettor, lacking?.say].flatMap((each) => each ?? []),
    ]);
  }
  for (const { regime, say } of PROOF_STEPS) yield { at: `proof ${regime}`, text: say };
  for (const { id, say } of PROOF_SIGNS) yield { at: `proof ${id}`, text: say };
  for (const { id, say, look } of WEAR_PATTERNS) yield* numbered(`wear ${id}`, [say, look]);
}

function* numbered(at: string, texts: readonly string[]): Generator<Prose> {
  for (const [i, text] of texts.entries()) yield { at: `${at}/${i}`, text };
}
