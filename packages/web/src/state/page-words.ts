// The long prose of the tables, and the findings beyond the first questions. Where the page is built,
// `packed/page-words.ts` stands in for this file and fetches them: rows come without them there.
import { CHECKS, FAULTS } from "@half-order/core";
import { type Words, wordsOf } from "../packed/pack.ts";

export const fetchFaultWords = async (): Promise<Words["faults"]> => wordsOf(FAULTS, []).faults;
export const fetchSteps = async (): Promise<Words["steps"]> => wordsOf([], CHECKS).steps;
/** True once the rows of all findings are whole. */
export const fetchFindings = async (): Promise<boolean> => true;
