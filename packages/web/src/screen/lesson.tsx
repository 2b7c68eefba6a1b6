// Break a part of an engine and watch: who drops out, what is stored, how it shakes, where the current goes.
import type { Engine } from "@half-order/core";
import { IDLING_SIX, SPARK_RANGE } from "@half-order/core/physics";
import type { VNode } from "preact";
import { useEffect } from "preact/hooks";
import { BreakAgain, BreakChoice } from "../lesson/break-choice.tsx";
import { Circuit } from "../lesson/circuit.tsx";
import { Codes } from "../lesson/codes.tsx";
import { EngineChoice } from "../lesson/engine-choice.tsx";
import {
  beginLesson,
  broke,
  engineId,
  isWorking,
  lessonEngine,
  OF_CASE,
  regime,
  takeEngine,
  watched,
} from "../lesson/lesson.ts";
import { LessonDial } from "../lesson/lesson-dial.tsx";
import { Regimes } from "../lesson/regimes.tsx";
import { Shake } from "../lesson/shake.tsx";
import { hasPairs } from "../lesson/spot.ts";
import { Voltage } from "../lesson/voltage.tsx";
import { sayBroken, saySize } from "../lesson/words.ts";
import { profile } from "../state/case.ts";
import { at, path } from "../state/route.ts";
import { drawn } from "../state/view.ts";
import { sayEngine } from "../text/answer.ts";
import { LESSON, type ModelFigures } from "../text/en-lesson.ts";
import { Heading } from "../ui/heading.tsx";
import "../style/lesson.css";
import "../style/lesson-drawing.css";

function Lesson(): VNode {
  useEffect(() => beginLesson(path.value), []);
  const engine = lessonEngine.value;
  return (
    <div class="lesson">
      <div class="lesson-choose">
        <Heading of="lesson">{LESSON.title}</Heading>
        <p class="help">{LESSON.lead}</p>
        {engine && <EngineChoice profile={engine.profile} onPick={takeEngine} {...ofCase()} />}
        <BreakChoice />
      </div>
      <LessonDial />
      <div class="lesson-watch">
        <BreakAgain />
        <Outcome />
        {engine && (
          <Voltage ignition={engine.ignition} gapM={plugGapM(engine)} hasPairs={hasPairs(engine)} />
        )}
        <section class="lesson-part">
          <h2>{LESSON.assumes}</h2>
          <p>{LESSON.model}</p>
          <ul class="lesson-assumptions">
            {LESSON.assumptions(assumed()).map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </section>
        <p>
          <a class="act-link" href={at("practice")}>
            {LESSON.practice}
          </a>
        </p>
      </div>
    </div>
  );
}

/** The engine of the open case may be broken too. */
function ofCase(): Pick<Parameters<typeof EngineChoice>[0], "own"> {
  const known = profile.value;
  if (!known || !drawn.value) return {};
  const say = LESSON.caseEngine(known.name ?? sayEngine(known));
  return { own: { value: OF_CASE, say, isChosen: engineId.value === OF_CASE } };
}

function assumed(): ModelFigures {
  const { boreM, strokeM } = IDLING_SIX.geometry;
  return { ...IDLING_SIX, bore: saySize(boreM), stroke: saySize(strokeM) };
}

/** What the manual wants, else the middle of what can be asked. */
function plugGapM({ profile: { figures } }: Engine): number {
  const [low, high] = SPARK_RANGE.gapM;
  const wanted = (figures?.plugGapMm?.[0] ?? 0) / 1000;
  return wanted >= low && wanted <= high ? wanted : (low + high) / 2;
}

function Outcome(): VNode {
  const [engine, seen, now] = [lessonEngine.value, watched.value, regime.value];
  if (broke.value !== undefined) {
    return (
      <p role="alert" class="wrong">
        {LESSON.broke}: {broke.value}
      </p>
    );
  }
  return (
    <>
      <p class="lesson-working" role="status">
        {isWorking.value ? LESSON.working : ""}
      </p>
      {seen === null && !isWorking.value && <p>{LESSON.never}</p>}
      {engine && seen && now && !isWorking.value && (
        <>
          <section class="lesson-part">
            <h2>{LESSON.what}</h2>
            <ul class="lesson-says">
              {seen.broken.map((each) => (
                <li key={each.figure + each.cylinders.join()}>{sayBroken(engine, each)}</li>
              ))}
            </ul>
          </section>
          <Regimes engine={engine} seen={seen} />
          <Codes engine={engine} seen={seen} />
          <Shake engine={engine} now={now} />
          <Circuit key={seen.place.id} engine={engine} now={now} place={seen.place} />
        </>
      )}
    </>
  );
}

export { Lesson as Screen };
