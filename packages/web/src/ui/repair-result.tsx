// How does it run after a repair? The answer is noted with the case, and the ranking takes it in.
import { REPAIR_RESULTS, type RepairResult } from "@half-order/core";
import type { VNode } from "preact";
import { MEND } from "../text/en-mend.ts";
import { Dashed, Option } from "./option.tsx";

interface ResultsProps {
  /** The result noted before. */
  readonly given?: RepairResult | undefined;
  /** Hears `undefined` for "not tried yet". */
  readonly onResult: (result: RepairResult | undefined) => void;
}

export function RepairResults({ given, onResult }: ResultsProps): VNode {
  return (
    <div class="options">
      {REPAIR_RESULTS.map((result) => {
        const [say, more] = MEND.results[result];
        return (
          <Option
            key={result}
            say={say}
            {...(more === "" ? {} : { more })}
            isGiven={given === result}
            onClick={() => onResult(result)}
          />
        );
      })}
      <Dashed more={MEND.untriedMore} onClick={() => onResult(undefined)}>
        {MEND.untried}
      </Dashed>
    </div>
  );
}
