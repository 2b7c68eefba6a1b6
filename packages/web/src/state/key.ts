// Keys that hold on every screen: one step back, one step forth.
import { redo, undo } from "./case.ts";

/** Follows the keys from now on; in a field they belong to the field. */
export function followKeys(): void {
  addEventListener("keydown", (event) => {
    const isInField = event.target instanceof HTMLElement && event.target.matches("input, select");
    if (isInField || event.altKey || !(event.ctrlKey || event.metaKey)) return;
    const key = event.key.toLowerCase();
    const isRedo = key === "y" || (key === "z" && event.shiftKey);
    if (!isRedo && key !== "z") return;
    event.preventDefault();
    if (isRedo) redo();
    else undo();
  });
}
