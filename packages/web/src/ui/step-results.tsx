// What a check at its place has shown: one question after the other, each answer noted with the case.
import {
  type CheckRow,
  type CylinderName,
  type Engine,
  EXCHANGE,
  exchangesFirst,
  type Finding,
  type FindingRow,
  type NextCheck,
  servedBy,
  suitsEngine,
} from "@half-order/core";
import type { VNode } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { putOffStep } from "../state/advice.ts";
import { asOneStep, findings, giveAnswer } from "../state/case.ts";
import { findingRow } from "../state/catalogue.ts";
import { draftKey } from "../state/draft.ts";
import { inUnits } from "../state/figure.ts";
import { at, goTo } from "../state/route.ts";
import {
  checkAddress,
  givenTo,
  keyOfLook,
  keyOfStep,
  type Look,
  looksOf,
  wasRun,
} from "../state/step.ts";
import { ranking } from "../state/thinking.ts";
import { type Disagreement, disagreement } from "../state/tried.ts";
import { closeUp, setOpen, spend } from "../state/work.ts";
import { sayAnswer } from "../text/asked.ts";
import { list } from "../text/en.ts";
import { STEP } from "../text/en-mend.ts";
import { Answerer } from "./answerer.tsx";
import { Disagree } from "./disagree.tsx";
import { Dashed } from "./option.tsx";
import { Part } from "./repair-part.tsx";

interface CheckResultsProps {
  readonly check: CheckRow;
  readonly cylinders: readonly CylinderName[];
  readonly engine: Engine;
  readonly planned: NextCheck | undefined;
  readonly isScreen: boolean;
}

/** One question after the other; what is noted can be changed until the screen is left. */
export function CheckResults({
  check,
  cylinders,
  engine,
  planned,
  isScreen,
}: CheckResultsProps): VNode | null {
  const [again, setAgain] = useState<string | undefined>(undefined);
  const [isBegun, setBegun] = useState(false);
  const isAsked = ({ row, cylinder }: Look): boolean =>
    row.travels === undefined || exchangesFirst(check, findingRow) || isMissing(cylinder);
  const looks = looksOf(rowsOf(check, engine), cylinders, engine).filter(isAsked);
  if (looks.length === 0) return null;
  const open = looks.filter((look) => !givenTo(look, findings.value, engine));
  const current = looks.find((look) => keyOfLook(look, engine) === again) ?? open[0];
  const tried = (): Disagreement | undefined =>
    disagreement(findings.value, findingRow, check.yields);
  const note = (look: Look, answer: Finding["answer"]): void => {
    asOneStep(() => {
      if (planned && open.length === looks.length) begin(planned, look);
      if (wasRun(check, look.row)) closeUp();
      // An earlier answer to the same question is taken the place of.
      const given = givenTo(look, findings.value, engine);
      giveAnswer(look.row.id, answer, given?.cylinder ?? look.cylinder);
    });
    setAgain(undefined);
    setBegun(true);
    const left = open.filter((other) => other !== look).length;
    // What speaks against another answer keeps the screen, so that it can be changed.
    if (left === 0 && !tried()) goTo("ranking");
    // The plan is made anew with each answer: what was begun keeps the screen until it is done.
    else if (!isScreen) goTo(...checkAddress(check.id, cylinders));
  };
  return (
    <Part title={STEP.found} depth={isScreen ? 1 : 2}>
      <Noted
        of={looks.filter((look) => look !== current && !open.includes(look))}
        engine={engine}
        onChange={(look) => {
          setAgain(keyOfLook(look, engine));
          setBegun(true);
        }}
      />
      <Disagree of={tried()} />
      {current && (
        <Ask
          key={keyOfLook(current, engine)}
          look={current}
          engine={engine}
          takesFocus={isBegun}
          onAnswer={(answer) => note(current, answer)}
        />
      )}
      <Dashed
        onClick={() => {
          putOffStep(check.id);
          goTo("ranking");
        }}
      >
        {open.length < looks.length ? STEP.done : STEP.notNow}
      </Dashed>
      {looks.some(({ row }) => row.scope === "cylinder") &&
        cylinders.length < engine.names.length && (
          <a class="act-link" href={at("check", check.id)}>
            {STEP.elsewhere}
          </a>
        )}
    </Part>
  );
}

/** Where nothing misses, an exchange that is made by the way could tell nothing. */
function isMissing(cylinder: CylinderName | undefined): boolean {
  const at = ranking.value?.cylinders.find((each) => each.cylinder === cylinder);
  return at !== undefined && at.misses > EXCHANGE.leastMisses;
}

function rowsOf(check: CheckRow, { profile }: Engine): readonly FindingRow[] {
  return check.yields.flatMap((id) => {
    const row = findingRow(id);
    return row && suitsEngine(profile, row) ? [row] : [];
  });
}

/** With its first answer a check has cost its minutes, and what came off for it is off until the engine runs. */
function begin(step: NextCheck, { row, cylinder }: Look): void {
  const shownBy = { finding: row.id, ...(cylinder === undefined ? {} : { cylinder }) };
  spend({ step: keyOfStep(step), minutes: step.minutes, shownBy });
  setOpen(step.opens.map(({ id }) => id));
}

interface AskProps {
  readonly look: Look;
  readonly engine: Engine;
  /** After an answer the focus goes on to the next question; the first one leaves it to the heading. */
  readonly takesFocus: boolean;
  readonly onAnswer: (answer: Finding["answer"]) => void;
}

function Ask({ look, engine, takesFocus, onAnswer }: AskProps): VNode {
  const { row } = look;
  const ref = useRef<HTMLParagraphElement>(null);
  useEffect(() => {
    if (takesFocus) ref.current?.focus();
  }, []);
  return (
    <section class="result" aria-label={row.ask}>
      <p class="ask" ref={ref} tabIndex={-1}>
        {sayLook(look, engine)}
      </p>
      {row.help && <p class="help">{inUnits.value(row.help)}</p>}
      <Answerer
        row={row}
        engine={engine}
        given={givenTo(look, findings.value, engine)?.answer}
        draft={draftKey(row.id, look.cylinder)}
        onAnswer={onAnswer}
      />
    </section>
  );
}

interface NotedProps {
  readonly of: readonly Look[];
  readonly engine: Engine;
  readonly onChange: (look: Look) => void;
}

function Noted({ of, engine, onChange }: NotedProps): VNode | null {
  if (of.length === 0) return null;
  return (
    <ul class="given" aria-label={STEP.noted}>
      {of.map((look) => {
        const asked = sayLook(look, engine);
        const given = givenTo(look, findings.value, engine);
        return (
          <li key={asked}>
            <span>
              <small>{asked}</small>
              {given && sayAnswer(look.row, given.answer)}
            </span>
            <button type="button" class="quiet" onClick={() => onChange(look)}>
              {STEP.change}
              <span class="vh">: {asked}</span>
            </button>
          </li>
        );
      })}
    </ul>
  );
}

/** The question, with the cylinders where not all are meant. */
function sayLook(look: Look, engine: Engine): string {
  const at = servedBy(engine, look.row.scope, look.cylinder);
  if (at.length === 0 || at.length === engine.names.length) return look.row.ask;
  const names = at.map((c) => engine.names[c] ?? c);
  return `${STEP.foundAt(names.length, list(names))}: ${look.row.ask}`;
}
