// Says that two things which were tried speak against one another, where they were answered.
import type { VNode } from "preact";
import type { Disagreement } from "../state/tried.ts";
import { DISAGREE } from "../text/en-mend.ts";

export function Disagree({ of }: { of: Disagreement | undefined }): VNode | null {
  return of ? (
    <p class="caution" role="alert">
      {DISAGREE[of]}
    </p>
  ) : null;
}
