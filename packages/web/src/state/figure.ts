// In which units is a text said? As the tables hold it until `state/unit.ts` has come, which knows what this
// person likes and is fetched only when it is needed.
import { signal } from "@preact/signals";

export const inUnits = signal<(text: string) => string>((text) => text);
