// What the page has to say, whatever is on the screen: that it cannot keep the case, and what has happened meanwhile.
import type { VNode } from "preact";
import { NEWS } from "../parts.ts";
import { storeTrouble, tabNews } from "../state/keep.ts";
import { update } from "../state/update.ts";
import { Lazy } from "./lazy.tsx";

export function PageNews(): VNode {
  const isTold = storeTrouble.value || tabNews.value || update.value === "waiting";
  return (
    <div role={storeTrouble.value ? "alert" : "status"}>{isTold && <Lazy entry={NEWS} />}</div>
  );
}
