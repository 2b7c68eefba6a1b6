// Stands in for `state/page-words.ts` where the page is built.
import faults from "#packed/fault-words.json?url";
import steps from "#packed/steps.json?url";
import { fillFindings } from "./asked.ts";
import { fetched } from "./fetched.ts";
import type { Words } from "./pack.ts";

export const fetchFaultWords = (): Promise<Words["faults"]> => fetched(faults);
export const fetchSteps = (): Promise<Words["steps"]> => fetched(steps);
export const fetchFindings = async (): Promise<boolean> => {
  await fillFindings();
  return true;
};
