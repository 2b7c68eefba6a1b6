// Stands in for the table of checks where the page is built; their steps come with `loadWords`.
import type { CheckRow } from "@half-order/core";
import { asked } from "./asked.ts";

export const CHECKS: readonly CheckRow[] = asked.checks;
