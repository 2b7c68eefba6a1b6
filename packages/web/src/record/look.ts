// A plug of a record in words: how the old one looks, and what was put in its place.
import type { PlugEntry } from "@half-order/core";
import { PLUG_LOOKS, type PlugLook } from "../diagram/plug-geometry.ts";
import { sayQuantity } from "../state/unit.ts";
import { PLUG } from "../text/en-plug.ts";
import { WEAR } from "../text/en-record.ts";

/** A look that this page can draw; a record of another program may hold others. */
export function asLook(look: string | undefined): PlugLook | undefined {
  return PLUG_LOOKS.find((known) => known === look);
}

/** As the drawing is named; an unknown one as it is written. */
export function sayLook(look: string): string {
  const known = asLook(look);
  return known ? PLUG.looks[known].name : look;
}

/** Its number and torque; `undefined` where neither was noted. */
export function sayPutIn({ part, torqueNm }: PlugEntry): string | undefined {
  const said = [part, torqueNm === undefined ? undefined : sayQuantity(torqueNm, "torque")];
  const what = said.filter((each) => each !== undefined).join(", ");
  return what === "" ? undefined : WEAR.putIn(what);
}
