// A check at its place, on a screen of its own.
import type { CylinderName } from "@half-order/core";
import type { VNode } from "preact";
import { useEffect } from "preact/hooks";
import { followPlan } from "../state/advice.ts";
import { checkRow } from "../state/catalogue.ts";
import { path } from "../state/route.ts";
import { drawn } from "../state/view.ts";
import { StepCheck } from "../ui/step-check.tsx";
import { Screen as Nowhere } from "./nowhere.tsx";
import "../style/mend.css";

function Step(): VNode {
  useEffect(followPlan, []);
  const [, id, at = ""] = path.value;
  const asked = at.split("+");
  const names = drawn.value?.names ?? [];
  // In the order of the address: the most suspected one is looked at first.
  const cylinders = asked.flatMap((name): readonly CylinderName[] =>
    names.filter((each) => String(each) === name).slice(0, 1),
  );
  if (id === undefined || !checkRow(id)) return <Nowhere />;
  return <StepCheck key={path.value.join("/")} id={id} cylinders={cylinders} isScreen />;
}

export { Step as Screen };
