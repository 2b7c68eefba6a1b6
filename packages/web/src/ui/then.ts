// What comes next once a check has come out so: the proof after a cure, else whoever leads then.
import { type Finding, saysCured } from "@half-order/core";
import { CHECK } from "../text/en-check.ts";
import { chanceText } from "./chance.tsx";

interface Leader {
  readonly name: string;
  readonly probability: number;
}

/** `undefined` where nobody leads, or it is not known yet who does. */
export function sayThen(
  answers: readonly Pick<Finding, "finding" | "answer">[],
  leader: Leader | undefined,
): string | undefined {
  if (saysCured(answers)) return CHECK.thenProve;
  return leader && CHECK.thenFirst(leader.name, chanceText(leader.probability));
}
