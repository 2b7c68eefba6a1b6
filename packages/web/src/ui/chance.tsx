// A probability: said as people say it, the number one tap away.
import { sayProbability } from "@half-order/core";
import type { VNode } from "preact";
import { hasNumbers } from "../state/view.ts";
import { RANKING } from "../text/en.ts";

/** In words or as a number, as the user has chosen. */
export function chanceText(probability: number): string {
  return hasNumbers.value ? sayPercent(probability) : sayProbability(probability);
}

/** "61 %", "3.2 %", "under 0.1 %". */
export function sayPercent(probability: number): string {
  const percent = probability * 100;
  if (percent > 0 && percent < 0.1) return "under 0.1 %";
  return `${percent < 10 ? percent.toFixed(1) : percent.toFixed(0)} %`;
}

interface ChanceProps {
  readonly of: number;
  /** What is so probable, for who hears the button without its row. */
  readonly name: string;
  readonly isEach?: boolean;
}

/** A button that turns all probabilities of the page into numbers and back. */
export function Chance({ of, name, isEach }: ChanceProps): VNode {
  const other = hasNumbers.value ? RANKING.inWords : RANKING.asNumber;
  return (
    <button
      type="button"
      class="chance"
      onClick={() => {
        hasNumbers.value = !hasNumbers.value;
      }}
    >
      {chanceText(of)}
      {isEach && <small>{RANKING.each}</small>}
      <span class="vh">{` (${name}, ${other})`}</span>
    </button>
  );
}

/** The same as a length. */
export function Bar({ of, isLeader }: { of: number; isLeader: boolean }): VNode {
  return (
    <span class={isLeader ? "bar is-leader" : "bar"} aria-hidden="true">
      <span style={{ width: `${Math.max(0.5, of * 100)}%` }} />
    </span>
  );
}
