// A case as a link: the whole case stands in the address after '#', which no browser sends to a server.
import type { Problem } from "@half-order/core";
import type { CaseDocument } from "@half-order/core/wire";
import { type FileReading, readCaseFile } from "../state/file.ts";
import { allFindings } from "../state/prose.ts";
import { LINK } from "../text/en-hand-over.ts";
import { pack, unpack } from "./pack.ts";
import { fitsSquare } from "./square.ts";

const MARK = "#/link/";

/** The part of an address from `#` on that carries a case. */
export async function writeLink(doc: CaseDocument): Promise<string> {
  return MARK + (await pack(JSON.stringify(doc)));
}

/** A case as an address, and as the one that a camera reads. */
export interface CaseLink {
  /** Holds the whole case. */
  readonly address: string;
  /** The same, or without the work where only then it fits into a square of dots. */
  readonly square: string;
}

/** `page`: the address of the page, up to its `#`. */
export async function linkOf(page: string, doc: CaseDocument): Promise<CaseLink> {
  const address = page + (await writeLink(doc));
  if (doc.work === undefined || fitsSquare(address)) return { address, square: address };
  const { work: _, ...rest } = doc;
  const lean = page + (await writeLink(rest));
  return { address, square: fitsSquare(lean) ? lean : address };
}

/**
 * The case in the part of an address from `#` on; `undefined` when that part carries none. Never rejects
 * for what stands in the address. The checks are loaded only when there is something to check.
 */
export async function readLink(hash: string): Promise<FileReading | undefined> {
  if (!hash.startsWith(MARK)) return undefined;
  // Programs that turn text into links like to take the full stop of the sentence along.
  const packed = hash.slice(MARK.length).replace(/[^\w-]+$/, "");
  const unpacked = await unpack(packed);
  if ("trouble" in unpacked) return { problems: [linkProblem(LINK.trouble[unpacked.trouble])] };
  try {
    // Answers can be checked only against whole rows.
    await allFindings();
  } catch {
    return { problems: [linkProblem(LINK.noTables)] };
  }
  return readCaseFile(new Blob([unpacked.text]));
}

function linkProblem([message, hint]: readonly [string, string]): Problem {
  return { code: "link-unreadable", path: "", message, hint };
}
