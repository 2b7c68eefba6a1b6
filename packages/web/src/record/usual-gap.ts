// What gap has a plug commonly? By it is told in which unit a figure was read.
import type { Figures } from "@half-order/core";
import { findingRow } from "../state/catalogue.ts";
import { hasAllFindings } from "../state/prose.ts";

/** mm; `undefined` while the rows of findings are on their way. */
export function usualGap(): Figures["plugGapMm"] {
  return hasAllFindings() ? findingRow("plug.gap")?.reading?.otherwise : undefined;
}
