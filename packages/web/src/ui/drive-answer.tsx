// May it be driven? One strong line on every screen of a case; the rest of it is one tap away.
import type { DriveLevel } from "@half-order/core";
import type { VNode } from "preact";
import { useEffect } from "preact/hooks";
import { isClosed, repairs } from "../state/case.ts";
import { drive, followDrive, isDriveUnknown } from "../state/drive.ts";
import { inUnits } from "../state/figure.ts";
import { seemsMended } from "../state/mended.ts";
import { at, screen } from "../state/route.ts";
import { askFrom, driveAddress, openQuestion } from "../state/way.ts";
import { DRIVE } from "../text/en-drive.ts";
import "../style/mend.css";

/** The line; there is none where the screen says it itself, nor once the case is closed. */
function DriveAnswer(): VNode | null {
  useEffect(followDrive, []);
  const isMended = seemsMended(repairs.value);
  const isSaid = screen.value === "drive" || (screen.value === "proof" && isMended);
  if (isSaid || isClosed.value) return null;
  return (
    <section class="drive-answer" aria-label={DRIVE.title} aria-live="polite">
      {isMended ? <Repaired /> : <DriveLine />}
    </section>
  );
}

function DriveLine(): VNode | null {
  const now = drive.value;
  if (isDriveUnknown.value) {
    return (
      <p class="caution">
        {DRIVE.unknown} <a href={driveAddress()}>{DRIVE.more}</a>
      </p>
    );
  }
  if (!now) return null;
  if (!now.level) {
    if (openQuestion.value?.id === "lamp") return null;
    return now.ask ? (
      <a class="drive-line" href={askFrom("ranking", now.ask)}>
        <Sign />
        <span>
          <strong>{DRIVE.ask}</strong>
          <u>{DRIVE.askLink}</u>
        </span>
      </a>
    ) : (
      <Nothing />
    );
  }
  const { level, say } = now.level;
  const [first] = now.rules;
  return (
    <a class={`drive-line is-${level}`} href={driveAddress()}>
      <Sign of={level} />
      <span>
        <strong>{inUnits.value(say)}</strong>
        <small>{first && inUnits.value(first.reason)}</small>
        <u>{DRIVE.more}</u>
      </span>
    </a>
  );
}

/** What was answered before a repair tells of another engine; what called for caution is asked for by the proof. */
function Repaired(): VNode {
  return (
    <a class="drive-line" href={at("proof")}>
      <Sign />
      <span>
        <strong>{DRIVE.repaired}</strong>
        <u>{DRIVE.toProof}</u>
      </span>
    </a>
  );
}

function Nothing(): VNode {
  return (
    <a class="drive-line" href={driveAddress()}>
      <Sign />
      <span>
        <strong>{DRIVE.nothing}</strong>
      </span>
    </a>
  );
}

/** A shape for each kind of answer, so that colour is not needed: an octagon, a triangle, a disc, a ring. */
export function Sign({ of }: { of?: DriveLevel }): VNode {
  return (
    <svg class="sign" viewBox="-12 -12 24 24" aria-hidden="true">
      {shapeOf(of)}
    </svg>
  );
}

function shapeOf(level: DriveLevel | undefined): VNode {
  switch (level) {
    case "stop-now":
    case "do-not-drive":
      return (
        <>
          <path class="field" d="M-4.4 -10.6H4.4L10.6 -4.4V4.4L4.4 10.6H-4.4L-10.6 4.4V-4.4Z" />
          <path class="stroke" d="M-6 0H6" />
        </>
      );
    case "to-safety-only":
      return (
        <>
          <path class="field" d="M0 -10.5L11 9.5H-11Z" />
          <path class="stroke" d="M0 -3.5V3M0 5.5V7" />
        </>
      );
    case "drive-gently":
      return <path class="outline" d="M0 -9.5L10 8.5H-10Z" />;
    default:
      return <circle class="outline" r="9" />;
  }
}

export { DriveAnswer as Screen };
