// May it be driven? One strong line on every screen of a case; the rest of it is one tap away.
import type { VNode } from "preact";
import { useEffect } from "preact/hooks";
import { REPAIRED } from "../parts.ts";
import { findings, isClosed, repairs } from "../state/case.ts";
import { drive, followDrive, isDriveUnknown } from "../state/drive.ts";
import { inUnits } from "../state/figure.ts";
import { alarmsSince, seemsMended } from "../state/mended.ts";
import { screen } from "../state/route.ts";
import { askFrom, driveAddress, openQuestion } from "../state/way.ts";
import { DRIVE } from "../text/en-drive.ts";
import { Sign } from "./drive-sign.tsx";
import { Lazy } from "./lazy.tsx";
import "../style/mend.css";

/** The line; there is none where the screen says it itself, nor once the case is closed. */
function DriveAnswer(): VNode | null {
  useEffect(followDrive, []);
  if (isClosed.value) return null;
  if (seemsMended(repairs.value) && !alarmsSince(findings.value, repairs.value)) {
    return <Lazy entry={REPAIRED} meanwhile={<div class="drive-answer" />} />;
  }
  if (screen.value === "drive") return null;
  return (
    <section class="drive-answer" aria-label={DRIVE.title} aria-live="polite">
      <DriveLine />
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
    if (now.ask && openQuestion.value?.id === now.ask) return null;
    return now.ask ? (
      <a class="drive-line" href={askFrom("ranking", now.ask)}>
        <Sign />
        <span>
          <strong>{DRIVE.ask[now.ask]}</strong>
          <u>{DRIVE.askLink[now.ask]}</u>
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

export { DriveAnswer as Screen };
