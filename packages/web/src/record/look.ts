// The look of a plug in words.
import { PLUG_LOOKS, type PlugLook } from "../diagram/plug-geometry.ts";
import { PLUG } from "../text/en-plug.ts";

/** A look that this page can draw; a record of another program may hold others. */
export function asLook(look: string | undefined): PlugLook | undefined {
  return PLUG_LOOKS.find((known) => known === look);
}

/** As the drawing is named; an unknown one as it is written. */
export function sayLook(look: string): string {
  const known = asLook(look);
  return known ? PLUG.looks[known].name : look;
}
