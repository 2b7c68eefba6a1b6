// What the page knows of the fault tables, which only the thread loads; it comes with the first ranking.
import { signal } from "@preact/signals";
import type { Facts } from "./thinker.ts";

export const facts = signal<Facts>({ ofCoil: [], ofHub: [] });
