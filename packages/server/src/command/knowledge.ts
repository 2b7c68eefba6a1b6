// `half-order knowledge`: the tables, what their numbers rest on, and a workshop's own numbers over them.
import {
  CODE_FAMILIES,
  type FaultRow,
  IGNITION_KINDS,
  InputError,
  KNOWLEDGE,
  type Knowledge,
  overlayKnowledge,
  type Problem,
  type Provenance,
  provenance,
  shareOf,
} from "@half-order/core";
import { parseOverlay } from "@half-order/core/wire";
import { type Input, plainWords, readJson } from "./input.ts";
import { json, percent, table } from "./text.ts";

/** Tables to rank with, and whose numbers are in them. */
export interface Numbers {
  readonly knowledge: Knowledge;
  /** Title or file of the overlay; undefined for the tables as they come. */
  readonly from?: string;
}

/** The tables with the overlay of a file laid over them; without a file, as they come. */
export async function readNumbers(file: string | undefined, stdin: Input): Promise<Numbers> {
  if (file === undefined) return { knowledge: KNOWLEDGE };
  try {
    const reading = parseOverlay(await readJson(file, stdin));
    if ("problems" in reading) throw new InputError(reading.problems);
    const knowledge = overlayKnowledge(KNOWLEDGE, reading.overlay);
    return { knowledge, from: reading.overlay.title ?? file };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    // A case may have problems of its own: these say which file they are in.
    const inFile = (each: Problem): Problem => ({ ...each, path: `${file}#${each.path}` });
    throw new InputError(error.problems.map(inFile));
  }
}

export async function knowledgeCommand(args: readonly string[], stdin: Input): Promise<string> {
  const { isJson, names } = plainWords(args, 1);
  const { knowledge } = await readNumbers(names[0], stdin);
  return isJson ? json(asObject(knowledge)) : say(knowledge);
}

function asObject(knowledge: Knowledge): object {
  const { faults, somethingElse, findings, checks, repairs, access } = knowledge;
  const { cautions, company, twoFaultsShare } = knowledge;
  const { total, byBasis, byConfidence, byTable } = provenance(knowledge);
  return {
    faults,
    somethingElse,
    twoFaultsShare,
    findings: [...findings.values()],
    checks,
    repairs,
    access,
    cautions,
    company,
    codes: CODE_FAMILIES,
    numbers: { total, byBasis, byConfidence, byTable },
  };
}

function say(knowledge: Knowledge): string {
  const { faults, somethingElse, findings, checks, repairs, access } = knowledge;
  return [
    `FAULTS (${faults.length}), of 1,000 complaints by ignition kind\n\n`,
    table([
      ["id", ...IGNITION_KINDS, "rests on"],
      ...[...faults, somethingElse].map((fault) => sayFault(fault)),
    ]),
    `\nFINDINGS (${findings.size})\n\n`,
    table([
      ["id", "kind", "options", "rests on"],
      ...[...findings.values()].map(({ id, kind, options, grounds }) => [
        id,
        kind,
        String(Object.keys(options).length).padStart(7),
        `${grounds.basis}, ${grounds.confidence}`,
      ]),
    ]),
    `\nCHECKS (${checks.length})\n\n`,
    table([
      ["id", "minutes", "tool", "answers"],
      ...checks.map(({ id, minutes, tool, yields }) => [
        id,
        String(minutes).padStart(7),
        tool,
        yields.join(", "),
      ]),
    ]),
    `\nREPAIRS (${repairs.length})\n\n`,
    table([
      ["id", "minutes", "parts", "mends"],
      ...repairs.map(({ id, minutes, parts, mends }) => [
        id,
        String(minutes).padStart(7),
        parts,
        mends.map(({ fault, works }) => `${fault} ${percent(works)}`).join(", "),
      ]),
    ]),
    `\nACCESS (${access.length}), what must come off first\n\n`,
    table([
      ["id", "minutes", "at"],
      ...access.map(({ id, minutes, at }) => [id, String(minutes).padStart(7), at]),
    ]),
    sayNumbers(provenance(knowledge)),
  ].join("");
}

function sayFault(fault: FaultRow): readonly string[] {
  const shares = IGNITION_KINDS.map((kind) => {
    const share = Math.round(shareOf(fault, kind) * 10) / 10;
    return (share === 0 ? "-" : String(share)).padStart(kind.length);
  });
  const { basis, confidence } = fault.grounds;
  const isMixed = Object.keys(fault.groundsOf ?? {}).length > 0;
  return [fault.id, ...shares, `${basis}, ${confidence}${isMixed ? "; in part changed" : ""}`];
}

function sayNumbers({ total, byBasis, byConfidence }: Provenance): string {
  const rows = [...Object.entries(byBasis), ...Object.entries(byConfidence)];
  return `\nNUMBERS (${total}), by what they rest on and how far they are trusted\n\n${table(
    rows.map(([name, count]) => [name, String(count).padStart(5), percent(count / total)]),
  )}`;
}
