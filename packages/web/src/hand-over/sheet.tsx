// The one page that is handed on: engine, picture, findings, what was checked and mended, what remains
// likely, cautions. The same on the screen and on paper.
import {
  type AtHand,
  checkRecord,
  type Engine,
  type EngineProfile,
  hasDiagnosticPort,
  type Ranking,
  sayProbability,
  stepCautions,
  wearReport,
} from "@half-order/core";
import type { CaseDocument } from "@half-order/core/wire";
import type { ComponentChildren, VNode } from "preact";
import { Block } from "../diagram/block.tsx";
import { Dial } from "../diagram/dial.tsx";
import type { Look } from "../diagram/mark.tsx";
import { courseOf } from "../record/course.ts";
import { sayDue } from "../record/due.ts";
import { nextAfter } from "../record/plan.ts";
import { checkRow, findingRow } from "../state/catalogue.ts";
import { seemsMended } from "../state/mended.ts";
import { drawnOrder, orderOf } from "../state/order.ts";
import { faultWords, hasAllFindings } from "../state/prose.ts";
import { sayOrder, sayProfile } from "../text/answer.ts";
import { LAZY, NAME, RANKING } from "../text/en.ts";
import { SHEET } from "../text/en-hand-over.ts";
import { DIAL } from "../text/en-picture.ts";
import { Bar, sayPercent } from "../ui/chance.tsx";
import { Invented } from "../ui/invented.tsx";
import { mendedLines } from "./mended.ts";
import {
  type AnswerLine,
  answerLines,
  cautionsOf,
  engineLine,
  type LikelyLine,
  likelyLines,
  plugLine,
} from "./summary.ts";

export interface SheetProps {
  readonly doc: CaseDocument;
  /** As it is known, which may be without its firing order. */
  readonly profile: EngineProfile;
  /** The engine that is drawn. */
  readonly engine: Engine;
  /** True where it is one of several that it may be. */
  readonly isVague: boolean;
  /** `undefined` while it is weighed. */
  readonly ranking: Ranking | undefined;
  readonly look: Look;
  /** Milliseconds since 1970 of the last change. */
  readonly changed: number;
  /** Whether one may drive, in a line. */
  readonly driving?: string;
  /** Stands beside the findings on paper, e.g. the way back into the case. */
  readonly children?: ComponentChildren;
}

export function Sheet(props: SheetProps): VNode {
  const { doc, engine, isVague, ranking, look, children } = props;
  // Rows that are not whole yet would be without their questions.
  const lines = hasAllFindings() ? answerLines(doc.findings, findingRow, engine) : undefined;
  return (
    <article class="sheet">
      <SheetHead {...props} />
      <div class="sheet-side">
        <div class="sheet-picture">
          <Dial engine={engine} look={look} />
          <Block engine={engine} look={look} />
          <p class="fine">{SHEET.dial}</p>
          {isVague && (
            <p class="fine">
              <b>{DIAL.vague}</b> {DIAL.drawnAs(sayOrder(orderOf(engine)), chanceOf(props))}
            </p>
          )}
        </div>
        <section>
          <h2>{SHEET.does}</h2>
          <Lines of={lines?.does} />
        </section>
        {children}
      </div>
      <div class="sheet-body">
        <section>
          <h2>{likelyTitle(doc)}</h2>
          {ranking ? <Likely ranking={ranking} /> : <p>{SHEET.weighing}</p>}
        </section>
        <section>
          <h2>{SHEET.checked}</h2>
          <Lines of={lines?.checked} />
        </section>
        <section>
          <h2>{SHEET.mended}</h2>
          <Lines of={mendedLines(doc, engine, isVague)} />
        </section>
        <LastPlugs {...props} />
      </div>
      <section class="sheet-care">
        <h2>{SHEET.cautions}</h2>
        {ranking && <FullCautions ranking={ranking} where={doc.atHand?.where} />}
        <p class="fine">{SHEET.overrule}</p>
      </section>
    </article>
  );
}

/** Once the last repair seems to have cured, the answers tell of the engine before it. */
function likelyTitle({ findings, repairs = [] }: CaseDocument): string {
  if (findings.length === 0) return SHEET.before;
  return seemsMended(repairs) ? RANKING.was : SHEET.remains;
}

function SheetHead(props: SheetProps): VNode {
  const { doc, profile, isVague, ranking, changed, driving } = props;
  const name = sayProfile(doc.engine);
  const facts = engineLine(doc, profile);
  return (
    <header class="sheet-head">
      <p class="fine">
        {NAME}: {doc.closed ? SHEET.aboutMended : SHEET.about}, {SHEET.on(sayMoment(changed))}
      </p>
      <h2 class="title">{doc.title ?? name}</h2>
      {facts && <p>{facts}</p>}
      {!hasDiagnosticPort(profile) && <p>{SHEET.noPort}</p>}
      <Invented of={doc.engine} />
      {isVague && (
        <p>
          <b>{DIAL.vague}</b> {ranking && sayLikeliest(ranking)}
        </p>
      )}
      {doc.note && (
        <p>
          <b>{SHEET.note}:</b> {doc.note}
        </p>
      )}
      {driving !== undefined && !doc.closed && (
        <p>
          <b>{driving}</b>
        </p>
      )}
      {doc.closed && <p>{SHEET.closed(sayMoment(doc.closed))}</p>}
    </header>
  );
}

function sayLikeliest({ orders = [] }: Ranking): string {
  const [first] = orders;
  if (!first) return "";
  const { firingOrder, probability } = first;
  const words = sayProbability(probability);
  return SHEET.likeliestOrder(sayOrder(firingOrder), words, sayPercent(probability));
}

/** Of the order that is drawn, in words and in numbers. */
function chanceOf({ ranking, engine }: SheetProps): string | undefined {
  const order = drawnOrder(ranking, engine);
  return order && `${sayProbability(order.probability)}, ${sayPercent(order.probability)}`;
}

/** The day of a moment as the locale writes it; as it is written where it is none. */
function sayMoment(moment: number | string): string {
  const date = new Date(moment);
  if (Number.isNaN(date.getTime())) return String(moment);
  return new Intl.DateTimeFormat(undefined, { dateStyle: "long" }).format(date);
}

interface FullCautionsProps {
  readonly ranking: Ranking;
  readonly where: AtHand["where"] | undefined;
}

/** In full: on paper there is nothing to tap. */
function FullCautions({ ranking, where }: FullCautionsProps): VNode | null {
  const cautions = cautionsOf(ranking, (id) => {
    const row = checkRow(id);
    return row ? stepCautions(row, where) : [];
  });
  if (cautions.length === 0) return null;
  return (
    <ul class="caution">
      {cautions.map(({ id, say }) => (
        <li key={id}>{say}</li>
      ))}
    </ul>
  );
}

/** Above this the findings are told to contradict each other. */
const CONFLICT_DB = 3;

function Likely({ ranking }: { ranking: Ranking }): VNode {
  const lines = likelyLines(ranking, RANKING.somethingElse);
  return (
    <>
      {ranking.fit.conflictDb > CONFLICT_DB && <p class="wrong">{SHEET.disagree}</p>}
      <ol class="sheet-ranked">
        {lines.map((line, i) => (
          <LikelyRow key={line.key} of={line} isLeader={i === 0} />
        ))}
      </ol>
    </>
  );
}

function LikelyRow({ of, isLeader }: { of: LikelyLine; isLeader: boolean }): VNode {
  const mend = of.fault === undefined ? undefined : faultWords(of.fault)?.mend;
  return (
    <li>
      <p class="sheet-name">
        <b>{of.name}</b>
        {of.likeliest && <small>{of.likeliest}</small>}
        {mend && <small>{mend}</small>}
      </p>
      <p class="sheet-chance">
        {of.words} {of.isEach && RANKING.each}
        <small>{of.number}</small>
      </p>
      <Bar of={of.probability} isLeader={isLeader} />
    </li>
  );
}

/** `undefined` while they are still coming. */
function Lines({ of }: { of: readonly AnswerLine[] | undefined }): VNode {
  if (!of) return <p class="help">{LAZY.coming}</p>;
  if (of.length === 0) return <p class="help">{SHEET.nothing}</p>;
  return (
    <ul class="sheet-lines">
      {of.map(({ asked, answer }) => (
        <li key={`${asked} ${answer}`}>
          {asked} <b>{answer}</b>
        </li>
      ))}
    </ul>
  );
}

/** Nothing while no set has come out, or where the last record is of another engine. */
function LastPlugs({ doc, profile }: SheetProps): VNode | null {
  const records = doc.records ?? [];
  const record = records.at(-1);
  if (!record || !hasAllFindings() || checkRecord(profile, record).length > 0) return null;
  const report = wearReport(profile, record);
  const next = nextAfter(profile, record, report, courseOf(record, records));
  const due = next ? sayDue(next) : "";
  return (
    <section>
      <h2>{SHEET.plugs}</h2>
      <Lines
        of={[plugLine(record, report), ...(due === "" ? [] : [{ asked: SHEET.next, answer: due }])]}
      />
    </section>
  );
}
