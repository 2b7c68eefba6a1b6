// May it be driven since its repair? What was answered before tells of another engine; what called for caution then is
// asked for by the proof, and what the proof has shown is said once it has passed.
import type { VNode } from "preact";
import { useEffect } from "preact/hooks";
import { provenBy } from "../state/mended.ts";
import { at, screen } from "../state/route.ts";
import { DRIVE } from "../text/en-drive.ts";
import { REPAIRED } from "../text/en-repaired.ts";
import { Sign } from "./drive-sign.tsx";
import { useProven } from "./proof-so-far.ts";

/** The line; there is none where the screen says it itself. */
function Repaired(): VNode | null {
  const drives = useProven();
  useEffect(() => {
    provenBy.value = drives;
    return () => {
      provenBy.value = undefined;
    };
  }, [drives]);
  if (screen.value === "drive" || screen.value === "proof") return null;
  return (
    <section class="drive-answer" aria-label={DRIVE.title} aria-live="polite">
      <a class="drive-line" href={at("proof")}>
        <Sign />
        <span>
          <strong>{drives === undefined ? REPAIRED.unproven : REPAIRED.proven(drives)}</strong>
          {drives !== undefined && <small>{REPAIRED.provenMore}</small>}
          <u>{drives === undefined ? REPAIRED.toProof : REPAIRED.seeProof}</u>
        </span>
      </a>
    </section>
  );
}

export { Repaired as Screen };
