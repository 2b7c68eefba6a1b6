// A check picked by hand.
import type { CheckRow } from "@half-order/core";
import type { VNode } from "preact";
import { ranking } from "../state/thinking.ts";
import { CHECK } from "../text/en.ts";
import { CheckPanel } from "../ui/check-panel.tsx";

export function Check({ check }: { check: CheckRow }): VNode {
  const fault = ranking.value?.ranking.find(({ firstCheck }) => firstCheck === check.id);
  return <CheckPanel key={check.id} check={check} fault={fault} label={CHECK.check} isScreen />;
}
