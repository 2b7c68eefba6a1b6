// May it be driven, in full: what to do, why, what would change it, what never to do, and the way to safety.
import type { DriveAdvice, DriveRuleRow, LimpHome } from "@half-order/core";
import type { VNode } from "preact";
import { useEffect } from "preact/hooks";
import { CASE_PROBLEMS } from "../parts.ts";
import { repairs } from "../state/case.ts";
import {
  drive,
  followDriveInFull,
  isDriveUnknown,
  isInFull,
  isRestMissing,
} from "../state/drive.ts";
import { inUnits } from "../state/figure.ts";
import { seemsMended } from "../state/mended.ts";
import { problems } from "../state/thinking.ts";
import { sayAbout, toUnit, units } from "../state/unit.ts";
import { isDesk } from "../state/view.ts";
import { askFrom, backAddress } from "../state/way.ts";
import { LAZY, list, QUESTION } from "../text/en.ts";
import { DRIVE } from "../text/en-drive.ts";
import { DRIVE_IN_FULL } from "../text/en-drive-in-full.ts";
import { GROUNDS } from "../text/en-ranking.ts";
import { Cautions } from "../ui/caution.tsx";
import { Sign } from "../ui/drive-sign.tsx";
import { Heading } from "../ui/heading.tsx";
import { Lazy } from "../ui/lazy.tsx";
import { Ordered, Part, Plain } from "../ui/repair-part.tsx";

function Drive(): VNode {
  useEffect(followDriveInFull, []);
  const now = drive.value;
  const level = now?.level;
  return (
    <section class="column drive">
      <p class="facts">
        <strong>{DRIVE.title}</strong>
      </p>
      <div class="drive-head">
        {now && <Sign {...(level ? { of: level.level } : {})} />}
        <Heading of={`drive ${level?.level}`} level={isDesk.value ? 2 : 1} class="act">
          {now
            ? level
              ? inUnits.value(level.say)
              : now.ask
                ? DRIVE.ask[now.ask]
                : DRIVE.nothing
            : DRIVE.title}
        </Heading>
      </div>
      {now && (isInFull.value ? <Whole of={now} /> : <Soon of={now} />)}
      {isDriveUnknown.value && <p class="caution">{DRIVE.unknown}</p>}
      {isDesk.value ? (
        <p>
          <a class="act-link" href={backAddress()}>
            {QUESTION.back}
          </a>
        </p>
      ) : (
        // On a desk it stands beside this, in the place of the ranking.
        problems.value.length > 0 && <Lazy entry={CASE_PROBLEMS} />
      )}
    </section>
  );
}

/** What is known before the rest of the words has come, or where it cannot be had. */
function Soon({ of }: { of: DriveAdvice }): VNode {
  return (
    <>
      {of.ask && <AskLook isKnown={of.level !== undefined} finding={of.ask} />}
      <Cautions ids={of.cautions} isShort={of.level !== undefined} />
      {of.level && (
        <Part title={DRIVE_IN_FULL.steps}>
          <Ordered of={of.level.steps} />
        </Part>
      )}
      <p class="help" role={isRestMissing.value ? "alert" : undefined}>
        {isRestMissing.value ? LAZY.failed : LAZY.coming}
      </p>
    </>
  );
}

function Whole({ of }: { of: DriveAdvice }): VNode {
  const { level, rules, never, missing, limpHome } = of;
  return (
    <>
      {of.ask && <AskLook isKnown={level !== undefined} finding={of.ask} />}
      {!level && <p class="help">{DRIVE_IN_FULL.nothingMore}</p>}
      {seemsMended(repairs.value) && <p>{DRIVE_IN_FULL.before}</p>}
      <Cautions ids={of.cautions} isShort={of.level !== undefined} />
      {level && (
        <Part title={DRIVE_IN_FULL.steps}>
          <Ordered of={level.steps} />
        </Part>
      )}
      {rules.length > 0 && (
        <Part title={DRIVE_IN_FULL.why}>
          <ul class="reasons">
            {rules.map((rule) => (
              <Reason key={rule.id} of={rule} isStrictest={rule.level === level?.level} />
            ))}
          </ul>
          {missing.length > 0 && <p class="help">{DRIVE_IN_FULL.missing(list(missing))}</p>}
        </Part>
      )}
      {never.length > 0 && <Never of={never} />}
      {limpHome && <Limp of={limpHome} />}
      <p class="fine">{DRIVE_IN_FULL.rules}</p>
      <p class="fine">{DRIVE_IN_FULL.overruled}</p>
    </>
  );
}

interface AskLookProps {
  readonly isKnown: boolean;
  readonly finding: NonNullable<DriveAdvice["ask"]>;
}

function AskLook({ isKnown, finding }: AskLookProps): VNode {
  return (
    <div class="aside">
      {isKnown && <p>{DRIVE_IN_FULL.askMore}</p>}
      <a class="option is-finish" href={askFrom("drive", finding)}>
        {DRIVE.askLink[finding]}
      </a>
    </div>
  );
}

interface ReasonProps {
  readonly of: DriveRuleRow;
  readonly isStrictest: boolean;
}

function Reason({ of, isStrictest }: ReasonProps): VNode {
  return (
    <li>
      <p>
        {inUnits.value(of.reason)} <small class="grounds">{GROUNDS[of.grounds.basis]}</small>
      </p>
      {!isStrictest && <p class="help">{DRIVE_IN_FULL.calls(DRIVE_IN_FULL.levels[of.level])}</p>}
      <p>
        <b>{DRIVE_IN_FULL.lifts}:</b> {of.lifts}
      </p>
    </li>
  );
}

function Never({ of, depth = 1 }: { of: readonly string[]; depth?: 1 | 2 }): VNode {
  return (
    <Part title={DRIVE_IN_FULL.never} kind="caution" depth={depth}>
      <ul class="never">
        {of.map((say) => (
          <li key={say}>{say}</li>
        ))}
      </ul>
    </Part>
  );
}

function Limp({ of }: { of: LimpHome }): VNode {
  const { limits, fuelCut } = of;
  const far = units.value.distance;
  const facts = [
    [DRIVE_IN_FULL.speed, `${speedIn(limits.maxSpeedKmh)} ${DRIVE_IN_FULL.speedIn[far]}`],
    [DRIVE_IN_FULL.distance, sayAbout(limits.maxDistanceKm, "distance", 1)],
    [DRIVE_IN_FULL.revs, DRIVE_IN_FULL.revsOf(String(limits.rpm[0]), String(limits.rpm[1]))],
    [DRIVE_IN_FULL.look, DRIVE_IN_FULL.lookEvery(limits.lookEveryMin)],
  ] as const;
  return (
    <>
      <Part title={DRIVE_IN_FULL.limp}>
        <p>
          <b>{DRIVE_IN_FULL.limits}:</b>
        </p>
        <dl>
          {facts.map(([term, say]) => (
            <div key={term} class="fact">
              <dt>{term}</dt>
              <dd>{say}</dd>
            </div>
          ))}
        </dl>
        <p class="help">{DRIVE_IN_FULL.limitsMore}</p>
        <Ordered of={of.steps} />
      </Part>
      <Never of={of.never} />
      <Part title={DRIVE_IN_FULL.tow}>
        <Plain of={of.towInstead} />
      </Part>
      {fuelCut && (
        <details class="topic">
          <summary>{DRIVE_IN_FULL.fuelCut}</summary>
          <div class="aside">
            <Cautions ids={fuelCut.cautions} />
            <Never of={fuelCut.never} />
            <Ordered of={fuelCut.steps} />
          </div>
        </details>
      )}
      <Part title={DRIVE_IN_FULL.afterwards}>
        <Plain of={of.afterwards} />
      </Part>
    </>
  );
}

/** A speed without its unit, to the five below: a limit is not rounded up. */
function speedIn(kmh: number): number {
  return Math.floor(toUnit(kmh, "distance", units.value.distance) / 5) * 5;
}

export { Drive as Screen };
