// A check picked by hand.
import type { VNode } from "preact";
import { checkRow } from "../state/catalogue.ts";
import { subject } from "../state/route.ts";
import { ranking } from "../state/thinking.ts";
import { CheckPanel } from "../ui/check-panel.tsx";
import { Screen as Nowhere } from "./nowhere.tsx";

function Check(): VNode {
  const check = checkRow(subject.value);
  if (!check) return <Nowhere />;
  const fault = ranking.value?.ranking.find(({ firstCheck }) => firstCheck === check.id);
  return <CheckPanel key={check.id} check={check} fault={fault} />;
}

export { Check as Screen };
