// Break a part of an engine and watch: who drops out, what is stored, how it shakes, where the current goes.
import type { Engine } from "@half-order/core";
import { IDLING_SIX, SPARK_RANGE } from "@half-order/core/physics";
import type { VNode } from "preact";
import { useEffect } from "preact/hooks";
import { BreakAgain, BreakChoice } from "../lesson/break-choice.tsx";
import { Circuit } from "../lesson/circuit.tsx";
import { Codes } from "../lesson/codes.tsx";
import { EngineChoice } from "../lesson/engine-choice.tsx";
import { beginLesson, broke, isWorking, lessonEngine, regime, watched } from "../lesson/lesson.ts";
import { LessonDial } from "../lesson/lesson-dial.tsx";
import { Regimes } from "../lesson/regimes.tsx";
import { Shake } from "../lesson/shake.tsx";
import { hasPairs } from "../lesson/spot.ts";
import { Voltage } from "../lesson/voltage.tsx";
import { sayBroken, saySize } from "../lesson/words.ts";
import { path } from "../state/route.ts";
import { LESSON, type ModelFigures } from "../text/en-lesson.ts";
import { Heading } from "../ui/heading.tsx";
import "../style/lesson.css";

function Lesson(): VNode {
  useEffect(() => beginLesson(path.value), []);
  const engine = lessonEngine.value;
  return (
    <div class="lesson">
      <div class="lesson-choose">
        <Heading of="lesson">{LESSON.title}</Heading>
        <p class="help">{LESSON.lead}</p>
        <EngineChoice />
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
      </div>
    </div>
  );
}

function assumed(): ModelFigures {
  const { boreM, strokeM } = IDLING_SIX.geometry;
  return { ...IDLING_SIX, bore: saySize(boreM), stroke: saySize(strokeM) };
}

/** What the manual wants, else the middle of what can be asked. */
function plugGapM({ profile }: Engine): number {
  const [low, high] = SPARK_RANGE.gapM;
  const wanted = (profile.figures?.plugGapMm?.[0] ?? 0) / 1000;
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
