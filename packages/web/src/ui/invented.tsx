// Says by whatever is told of an invented engine that there is none.
import { type EngineProfile, profileById } from "@half-order/core";
import type { VNode } from "preact";
import { INVENTED } from "../text/en-invented.ts";

interface InventedProps {
  /** As a case holds it. */
  readonly of: string | EngineProfile;
  /** Below a picture. */
  readonly isCaption?: boolean;
}

/** Nothing for any other engine. */
export function Invented({ of, isCaption = false }: InventedProps): VNode | null {
  const profile = typeof of === "string" ? profileById(of) : of;
  return profile?.invented ? <p class={isCaption ? "caption" : "fine"}>{INVENTED}</p> : null;
}
