// Is it mended? The drives that prove a repair, counted one by one; then the case can be closed.
import {
  type DriveLevel,
  type ProofPlan,
  proofResult,
  type RepairDone,
  type TrialOutcome,
} from "@half-order/core";
import type { VNode } from "preact";
import { useEffect } from "preact/hooks";
import { asOneStep, closeAsMended, repairs, setRepairResult } from "../state/case.ts";
import { drive, followDriveInFull, isInFull, isRestMissing } from "../state/drive.ts";
import { inUnits } from "../state/figure.ts";
import {
  DRIVES,
  type DriveName,
  failureOf,
  nameOfDrive,
  provenIndex,
  resultAfter,
} from "../state/proof.ts";
import { at, goTo, path, subject } from "../state/route.ts";
import { isDesk } from "../state/view.ts";
import { addDrive, drivesOf, dropDrive } from "../state/work.ts";
import { LAZY, list } from "../text/en.ts";
import { PROOF } from "../text/en-mend.ts";
import { Cautions } from "../ui/caution.tsx";
import { chanceText } from "../ui/chance.tsx";
import { Heading } from "../ui/heading.tsx";
import { Dashed, Finish, Option } from "../ui/option.tsx";
import { useMending } from "../ui/repair-mending.ts";
import { Part, Plain } from "../ui/repair-part.tsx";
import "../style/mend.css";

function Proof(): VNode {
  const index = provenIndex(repairs.value, subject.value);
  const repair = repairs.value[index];
  return (
    <section class="column proof">
      <Heading of="proof" level={isDesk.value ? 2 : 1} class="act">
        {PROOF.title}
      </Heading>
      {repair ? <Of key={repair.when} repair={repair} index={index} /> : <p>{PROOF.none}</p>}
    </section>
  );
}

function Of({ repair, index }: { repair: RepairDone; index: number }): VNode {
  // As it looked before the repair: its drives are the evidence, not the first impression.
  const mending = useMending(repair, index)?.mending;
  if (!mending) return <p class="help">{LAZY.coming}</p>;
  const { proof } = mending;
  return (
    <>
      <p class="help">{PROOF.of(mending.name)}</p>
      {proof ? <Drives plan={proof} repair={repair} index={index} /> : <p>{PROOF.noPlan}</p>}
    </>
  );
}

interface DrivesProps {
  readonly plan: ProofPlan;
  readonly repair: RepairDone;
  readonly index: number;
}

function Drives({ plan, repair, index }: DrivesProps): VNode {
  const key = repair.when ?? String(index);
  const drives = drivesOf(key);
  const result = proofResult(plan, drives);
  const failure = failureOf(result);
  const isProven = result?.result === "cured";
  const set = (change: () => void): void => {
    asOneStep(() => {
      change();
      const after = resultAfter(proofResult(plan, drivesOf(key)));
      if (after !== repair.result) setRepairResult(index, after);
    });
    // Up to the count, which has changed.
    goTo(...path.value);
  };
  return (
    <>
      {!failure && (
        <Count plan={plan} clean={result?.cleanTrials ?? 0} believed={result?.believed} />
      )}
      {isProven && <Finish onClick={close}>{PROOF.close}</Finish>}
      {failure ? (
        <Failed of={failure} />
      ) : (
        !isProven && (
          <>
            {drives.length === 0 && <BeforeFirst />}
            <EachDrive plan={plan} />
            <AskDrive
              number={drives.length + 1}
              onDrive={(drive) => set(() => addDrive(key, drive))}
            />
          </>
        )
      )}
      <SoFar drives={drives} onTakeBack={() => set(() => dropDrive(key))} />
    </>
  );
}

function close(): void {
  closeAsMended();
  goTo("proof");
}

interface CountProps {
  readonly plan: ProofPlan;
  readonly clean: number;
  readonly believed: number | undefined;
}

function Count({ plan, clean, believed = plan.belief }: CountProps): VNode {
  return (
    <div role="status" class="aside">
      <p class="lead">
        <strong>{PROOF.lead(clean, plan.trials)}</strong>
      </p>
      <ol class="drives" aria-hidden="true">
        {Array.from({ length: plan.trials }, (_, i) => (
          <li key={i} class={i < clean ? "is-clean" : undefined} />
        ))}
      </ol>
      <p class="help">
        {PROOF.believed(chanceText(believed))}
        {clean < plan.trials && ` ${PROOF.after(chanceText(plan.believed))}`}
      </p>
    </div>
  );
}

/** What called for caution before the repair must be seen to be gone. */
function BeforeFirst(): VNode | null {
  useEffect(followDriveInFull, []);
  const rules = drive.value?.rules.filter(({ level }) => !MILD.includes(level)) ?? [];
  if (rules.length === 0) return null;
  return (
    <Part title={PROOF.before} kind="caution">
      <p>{PROOF.beforeBody}</p>
      {isInFull.value ? (
        <Plain of={rules.map(({ lifts }) => lifts)} />
      ) : (
        <p>{isRestMissing.value ? LAZY.failed : LAZY.coming}</p>
      )}
    </Part>
  );
}

/** At these levels one may drive as it is. */
const MILD: readonly DriveLevel[] = ["drive-gently", "normal-care"];

/** What a drive holds, cautions first, and what is read after it. */
function EachDrive({ plan }: { plan: ProofPlan }): VNode {
  const cautions = [...new Set(plan.trial.flatMap((step) => step.cautions))];
  return (
    <>
      <Part title={PROOF.drive}>
        <Cautions ids={cautions} />
        <ol class="steps">
          {plan.trial.map(({ regime, say, minutes }) => (
            <li key={regime}>
              <span>
                {inUnits.value(say)} <small>{PROOF.minutes(minutes)}</small>
              </span>
            </li>
          ))}
        </ol>
      </Part>
      <Part title={PROOF.clear}>
        <Plain of={plan.clear.map(({ say }) => say)} />
        <p class="help">{PROOF.codes(list(plan.codes))}</p>
      </Part>
    </>
  );
}

interface AskDriveProps {
  readonly number: number;
  readonly onDrive: (drive: TrialOutcome) => void;
}

function AskDrive({ number, onDrive }: AskDriveProps): VNode {
  return (
    <Part title={PROOF.how(number)}>
      <div class="options">
        {(Object.keys(DRIVES) as readonly DriveName[]).map((name) => (
          <Option
            key={name}
            say={PROOF[name]}
            {...(name === "clean" ? { more: PROOF.cleanMore } : {})}
            onClick={() => onDrive(DRIVES[name])}
          />
        ))}
      </div>
    </Part>
  );
}

function Failed({ of }: { of: keyof typeof PROOF.failed }): VNode {
  return (
    <>
      <p role="alert" class="caution">
        <strong>{PROOF.failed[of]}</strong> {PROOF.failedMore}
      </p>
      <a class="option is-finish" href={at("ranking")}>
        {PROOF.onward}
      </a>
    </>
  );
}

interface SoFarProps {
  readonly drives: readonly TrialOutcome[];
  readonly onTakeBack: () => void;
}

function SoFar({ drives, onTakeBack }: SoFarProps): VNode | null {
  if (drives.length === 0) return null;
  return (
    <Part title={PROOF.drives}>
      <ol class="group">
        {drives.map((drive, i) => (
          // A drive has nothing of its own but its number.
          <li key={i}>{PROOF.driveIs(i + 1, PROOF[nameOfDrive(drive)])}</li>
        ))}
      </ol>
      <Dashed onClick={onTakeBack}>{PROOF.takeBack}</Dashed>
    </Part>
  );
}

export { Proof as Screen };
