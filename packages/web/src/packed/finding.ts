// Stands in for the table of findings where the page is built: fetched as data, not parsed as script.
import type { FindingRow } from "@half-order/core";
import { asked } from "./asked.ts";

export const FINDINGS: readonly FindingRow[] = asked.findings;
