// All about one repair on the open case, for a screen that shows it.
import { useEffect, useState } from "preact/hooks";
import { followMending } from "../state/advice.ts";
import type { Advice, Wanted } from "../state/advising.ts";

/** `undefined` until it has been worked out; `before` as in `followMending`. */
export function useMending(wanted: Wanted | undefined, before?: number): Advice | undefined {
  const [advice, setAdvice] = useState<Advice | undefined>(undefined);
  const { repair, cylinder } = wanted ?? {};
  useEffect(() => {
    if (repair === undefined) return undefined;
    const of = { repair, ...(cylinder === undefined ? {} : { cylinder }) };
    return followMending(of, before, setAdvice);
  }, [repair, cylinder, before]);
  return advice;
}
