// Two cases of this device side by side: engine, first places, repairs, and the answers that differ.
import { type Engine, type EngineProfile, type Finding, profileById } from "@half-order/core";
import type { VNode } from "preact";
import { useEffect, useState } from "preact/hooks";
import { mendedLines } from "../hand-over/mended.ts";
import { likelyLines } from "../hand-over/summary.ts";
import { enginesOf } from "../state/case.ts";
import { findingRow } from "../state/catalogue.ts";
import { atWhole, compared, type Difference } from "../state/compare.ts";
import { lookAtShelf, open, shelf } from "../state/keep.ts";
import { hasAllFindings } from "../state/prose.ts";
import { at, goTo, path } from "../state/route.ts";
import type { CaseDoc, KeptCase } from "../state/store.ts";
import { Thinker, type Thought } from "../state/thinker.ts";
import { thread } from "../state/thinking.ts";
import { clearView } from "../state/view.ts";
import { sayCase, sayProfile } from "../text/answer.ts";
import { sayAnswer, sayAsked } from "../text/asked.ts";
import { LAZY, RANKING } from "../text/en.ts";
import { COMPARE } from "../text/en-compare.ts";
import { sayKept } from "../text/kept.ts";
import { Bar, chanceText } from "../ui/chance.tsx";
import { Heading } from "../ui/heading.tsx";
import { Invented } from "../ui/invented.tsx";
import "../style/compare.css";

function Compare(): VNode {
  const [isRead, setRead] = useState(false);
  useEffect(() => {
    void lookAtShelf().then(() => setRead(true));
  }, []);
  const [, ...ids] = path.value;
  const [a, b] = ids.map((id) => shelf.value.find((kept) => kept.id === id));
  return (
    <section class="compare">
      <Heading of="compare">{COMPARE.title}</Heading>
      {a && b ? (
        hasAllFindings() && <Both of={[a, b]} />
      ) : (
        <p class="help">{isRead ? COMPARE.gone : LAZY.coming}</p>
      )}
      <ul class="links">
        <li>
          <a href={at("cases")}>{COMPARE.all}</a>
        </li>
      </ul>
    </section>
  );
}

function Both({ of }: { of: readonly [KeptCase, KeptCase] }): VNode {
  const thoughts = useThoughts(of);
  const [a, b] = of;
  const { differences, alike } = compared(findingsOf(a.doc), findingsOf(b.doc));
  return (
    <>
      <div class="pair">
        {of.map((kept, i) => (
          <One key={kept.id} kept={kept} thought={thoughts[i]} />
        ))}
      </div>
      <section class="aside">
        <h2>{COMPARE.differ}</h2>
        {differences.length === 0 && <p>{COMPARE.none}</p>}
        <ul class="differences">
          {differences.map((each) => (
            <Differing key={`${each.finding} ${each.cylinder}`} of={each} names={[a, b]} />
          ))}
        </ul>
        {alike > 0 && <p class="help">{COMPARE.alike(alike)}</p>}
      </section>
    </>
  );
}

/** The rankings of both, one after the other, in a thread that ends with the screen. */
function useThoughts([a, b]: readonly [KeptCase, KeptCase]): readonly (Thought | undefined)[] {
  const [thoughts, setThoughts] = useState<readonly Thought[]>([]);
  const script = thread.value;
  useEffect(() => {
    setThoughts([]);
    if (script === undefined) return undefined;
    const thinker = new Thinker(script);
    const weigh = async ({ doc }: KeptCase): Promise<Thought> => {
      const profile = profileOf(doc);
      if (!profile) return { problems: [] };
      const { findings, repairs = [] } = doc;
      return thinker
        .ask({ profile, findings, repairs, tolerance: ROUGH })
        .catch((error: unknown): Thought => ({ broke: String(error) }));
    };
    void (async () => {
      const first = await weigh(a);
      setThoughts([first]);
      setThoughts([first, await weigh(b)]);
    })();
    return () => thinker.stop();
  }, [script, a.doc, b.doc]);
  return thoughts;
}

/** Probability that may stay unsearched: the first three are hardly ever so close. */
const ROUGH = 1e-3;
const SHOWN = 3;

function profileOf({ engine }: CaseDoc): EngineProfile | undefined {
  return typeof engine === "string" ? profileById(engine) : engine;
}

interface OneProps {
  readonly kept: KeptCase;
  /** `undefined` while it is weighed. */
  readonly thought: Thought | undefined;
}

function One({ kept, thought }: OneProps): VNode {
  const { doc } = kept;
  const [engine, ...others] = enginesIn(doc);
  const repairs = engine ? mendedLines(doc, engine, others.length > 0) : [];
  const first = doc.closed === undefined ? COMPARE.first : RANKING.was;
  return (
    <section class="aside">
      <h2>{sayCase(doc)}</h2>
      <p class="help">
        {[
          ...(doc.title === undefined ? [] : [sayProfile(doc.engine)]),
          sayKept(kept),
          ...(doc.closed === undefined ? [] : [COMPARE.closed]),
        ].join(", ")}
      </p>
      <Invented of={doc.engine} />
      <h3>{doc.findings.length > 0 ? first : COMPARE.before}</h3>
      <FirstThree thought={thought} />
      <h3>{COMPARE.repairs}</h3>
      {repairs.length === 0 ? (
        <p class="help">{COMPARE.noRepairs}</p>
      ) : (
        <ul class="group">
          {repairs.map(({ asked, answer }, i) => (
            // The same repair may be done twice.
            <li key={i}>
              {asked} <b>{answer}</b>
            </li>
          ))}
        </ul>
      )}
      <button
        type="button"
        class="option"
        onClick={() => {
          clearView();
          open(kept);
          goTo("ranking");
        }}
      >
        {COMPARE.open}
        <span class="vh">: {sayCase(doc)}</span>
      </button>
    </section>
  );
}

function FirstThree({ thought }: Pick<OneProps, "thought">): VNode {
  if (!thought) return <p class="help">{RANKING.weighing}</p>;
  if (!thought.ranking) return <p class="wrong">{COMPARE.broken}</p>;
  const lines = likelyLines(thought.ranking, RANKING.somethingElse).slice(0, SHOWN);
  return (
    <ol class="first-three">
      {lines.map(({ key, name, likeliest, isEach, probability }, i) => (
        <li key={key}>
          <p>
            {name} <b>{chanceText(probability)}</b> {isEach && RANKING.each}
            {likeliest && <small>{likeliest}</small>}
          </p>
          <Bar of={probability} isLeader={i === 0} />
        </li>
      ))}
    </ol>
  );
}

/** None where the engine is not sound: there is no place to name. */
function enginesIn(doc: CaseDoc): readonly Engine[] {
  const profile = profileOf(doc);
  return profile ? enginesOf(profile) : [];
}

function findingsOf(doc: CaseDoc): readonly Finding[] {
  const [engine] = enginesIn(doc);
  return engine ? atWhole(doc.findings, findingRow, engine) : doc.findings;
}

interface DifferingProps {
  readonly of: Difference;
  readonly names: readonly [KeptCase, KeptCase];
}

function Differing({ of, names }: DifferingProps): VNode {
  const row = findingRow(of.finding);
  return (
    <li>
      <p>{sayAsked(row, of)}</p>
      <dl class="pair">
        {of.answers.map((answer, i) => (
          <div key={i}>
            <dt>{names[i] && sayCase(names[i].doc)}</dt>
            <dd>
              {answer === undefined ? (
                <span class="help">{COMPARE.notAnswered}</span>
              ) : (
                <b>{sayAnswer(row, answer)}</b>
              )}
            </dd>
          </div>
        ))}
      </dl>
    </li>
  );
}

export { Compare as Screen };
