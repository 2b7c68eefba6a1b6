// Stands in for the table of repairs where the page is built: it comes with the findings that come later.
import type { RepairRow } from "@half-order/core";
import { fillFindings } from "./asked.ts";

const { others } = await fillFindings();

export const REPAIRS: readonly RepairRow[] = others.repairs ?? [];
