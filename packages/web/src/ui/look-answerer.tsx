// Asks how a plug looks, with a drawing of each look.
import type { VNode } from "preact";
import { LookButton } from "../diagram/plug-picker.tsx";
import { asLook } from "../record/look.ts";
import type { AnswererProps } from "./answerer.tsx";
import { Option } from "./option.tsx";

/** An option without a drawing is a plain button. */
export function LookAnswerer({ row, given, onAnswer }: AnswererProps): VNode {
  return (
    <div class="plug-looks">
      {Object.entries(row.options).map(([option, { say, more }]) => {
        const look = asLook(option);
        const isGiven = given === option;
        const answer = (): void => onAnswer(option);
        return look ? (
          <LookButton key={option} look={look} isGiven={isGiven} onPick={answer} />
        ) : (
          <Option key={option} say={say} more={more} isGiven={isGiven} onClick={answer} />
        );
      })}
    </div>
  );
}
