// A hidden fault to look for: the story is told, checks are made at the cost of their minutes, and after the
// repair both ways stand beside one another.
import type { EngineProfile } from "@half-order/core";
import type { VNode } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { EngineChoice } from "../lesson/engine-choice.tsx";
import { BothWays } from "../practice/both-ways.tsx";
import { Log, Story } from "../practice/log.tsx";
import { Offers } from "../practice/offers.tsx";
import {
  act,
  beginPractice,
  comparison,
  engineProfile,
  hasActed,
  hideAnother,
  isWorking,
  mend,
  misread,
  practice,
  trouble,
  wanted,
} from "../practice/practice.ts";
import { hasAllFindings } from "../state/prose.ts";
import { path } from "../state/route.ts";
import { sayEngine } from "../text/answer.ts";
import { PRACTICE } from "../text/en-practice.ts";
import { Heading } from "../ui/heading.tsx";
import "../style/practice.css";

function PracticeScreen(): VNode {
  useEffect(() => beginPractice(path.value), [path.value]);
  const profile = engineProfile.value;
  return (
    <div class="practice">
      <div class="practice-head">
        <Heading of="practice">{PRACTICE.title}</Heading>
        <p>{PRACTICE.lead}</p>
        <p class="help">{PRACTICE.simulated}</p>
        {profile && (
          <details>
            <summary>{PRACTICE.engine(sayIn(profile))}</summary>
            <div class="practice-engine">
              <EngineChoice profile={profile} onPick={hideAnother} />
              <button type="button" class="option" onClick={() => hideAnother()}>
                {PRACTICE.another}
              </button>
            </div>
          </details>
        )}
      </div>
      <State />
      {hasAllFindings() && practice.value && <Search />}
    </div>
  );
}

/** "Dunlin: Inline 4, 1-3-4-2, coil rail". */
function sayIn(profile: EngineProfile): string {
  const { invented, name } = profile;
  return invented && name !== undefined ? `${name}: ${sayEngine(profile)}` : sayEngine(profile);
}

function State(): VNode {
  const isComparing = wanted.value !== undefined && isWorking.value;
  const says = isComparing ? PRACTICE.comparing : PRACTICE.working;
  const ref = useRef<HTMLParagraphElement>(null);
  // What was tapped is gone by then; the result takes the focus over.
  useEffect(() => {
    if (isComparing && hasActed.peek()) ref.current?.focus();
  }, [isComparing]);
  return (
    <>
      {misread.value.length > 0 && <p role="status">{misread.value.join(" ")}</p>}
      <p ref={ref} class="practice-state" role="status" tabIndex={-1}>
        {isWorking.value ? says : ""}
      </p>
      {trouble.value.length > 0 && (
        <p role="alert" class="wrong">
          {PRACTICE.broke}: {trouble.value.join(" ")}
        </p>
      )}
    </>
  );
}

function Search(): VNode | null {
  const now = practice.value;
  const both = comparison.value;
  if (!now) return null;
  return (
    <>
      {both && (
        <div class="practice-result">
          <BothWays of={both} />
        </div>
      )}
      <div class="practice-known">
        <Story of={now.story} />
        <Log of={now} />
      </div>
      {!wanted.value && (
        <div class="practice-choose">
          <section class="practice-part">
            <h2>{PRACTICE.check}</h2>
            <Offers
              kind="check"
              offers={now.checks}
              onTake={(check, cylinder) =>
                act({ kind: "check", check, ...(cylinder === undefined ? {} : { cylinder }) })
              }
            />
          </section>
          <section class="practice-part">
            <h2>{PRACTICE.mend}</h2>
            <p class="help">{PRACTICE.mendHelp}</p>
            <Offers
              kind="repair"
              offers={now.repairs}
              onTake={(repair, cylinder) =>
                mend({ repair, ...(cylinder === undefined ? {} : { cylinder }) })
              }
            />
          </section>
          <section class="practice-part">
            <button type="button" class="option is-dashed" onClick={() => act({ kind: "peek" })}>
              <span class="words">
                {PRACTICE.peek}
                <small>{PRACTICE.peekHelp}</small>
              </span>
            </button>
          </section>
        </div>
      )}
    </>
  );
}

export { PracticeScreen as Screen };
