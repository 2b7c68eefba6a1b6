// Why a fault stands where it stands: a column of weights that adds up.
import type { FaultAt, Grounds, Ledger, LedgerLine } from "@half-order/core";
import type { VNode } from "preact";
import { useEffect } from "preact/hooks";
import { answerOf } from "../state/case.ts";
import { findingRow } from "../state/catalogue.ts";
import { at } from "../state/route.ts";
import { ledger, wanted } from "../state/thinking.ts";
import { drawn, isDesk } from "../state/view.ts";
import { sayAnswer, sayAsked } from "../text/asked.ts";
import { COLUMN } from "../text/en-column.ts";
import { GROUNDS, GROUNDS_SAY, NOTES } from "../text/en-ranking.ts";
import { chanceText } from "./chance.tsx";
import { column, sayDb } from "./column.ts";
import { Under } from "./heading.tsx";
import "../style/ledger.css";

interface BecauseProps extends FaultAt {
  readonly probability: number;
}

/** Asks for the ledger of a fault while it is on the screen, and shows it when it has come. */
export function Because({ fault, place, probability }: BecauseProps): VNode {
  useEffect(() => {
    wanted.value = { fault, place };
  }, [fault, place]);
  const known = ledger.value;
  const isHere = known?.fault === fault && known.place === place;
  return (
    <section class="because" aria-busy={!isHere}>
      <Under level={isDesk.value ? 2 : 1}>{NOTES.because}</Under>
      {isHere ? (
        <Column of={known} probability={probability} />
      ) : (
        <p class="help">{COLUMN.adding}</p>
      )}
      {isHere && known.lines.length === 0 && <p class="help">{COLUMN.empty}</p>}
      <details>
        <summary>{COLUMN.what}</summary>
        <p>{COLUMN.explain}</p>
      </details>
    </section>
  );
}

/** dB that fill half the width of the bars. */
const WIDEST_DB = 15;

function Column({ of, probability }: { of: Ledger; probability: number }): VNode {
  const [prior = 0, ...weights] = column([of.priorDb, ...of.lines.map(({ weightDb }) => weightDb)]);
  const sum = [prior, ...weights].reduce((a, b) => a + b, 0);
  return (
    <table class="ledger">
      <thead class="vh">
        <tr>
          <th scope="col">{COLUMN.finding}</th>
          <th scope="col">{COLUMN.weight}</th>
        </tr>
      </thead>
      <tbody>
        <tr>
          <th scope="row">{COLUMN.before}</th>
          <td class="db">{sayDb(prior)}</td>
        </tr>
        {of.lines.map((line, i) => (
          <Line key={`${line.finding} ${line.cylinder}`} line={line} weight={weights[i] ?? 0} />
        ))}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row">
            {COLUMN.now}
            <small>{chanceText(probability)}</small>
          </th>
          <td class="db">
            {sayDb(sum)} <abbr title={COLUMN.unitLong}>{COLUMN.unit}</abbr>
          </td>
        </tr>
      </tfoot>
    </table>
  );
}

function Line({ line, weight }: { line: LedgerLine; weight: number }): VNode {
  const row = findingRow(line.finding);
  const answer = answerOf(line.finding, line.cylinder);
  const share = Math.min(1, Math.abs(weight) / WIDEST_DB) * 50;
  return (
    <tr>
      <th scope="row">
        <small>{sayAsked(row, line, drawn.value)}</small>
        {answer === undefined ? "" : sayAnswer(row, answer)}
        <Rests on={line.grounds} />
        <span class="weight-bar" aria-hidden="true">
          <span
            class={weight < 0 ? "against" : "for"}
            style={{ width: `${share}%`, left: `${weight < 0 ? 50 - share : 50}%` }}
          />
        </span>
      </th>
      <td class="db">{sayDb(weight)}</td>
    </tr>
  );
}

/** What a weight rests on, in a word; a tap tells what that means. */
function Rests({ on: { basis, source } }: { on: Grounds }): VNode {
  return (
    <details class="rests">
      <summary>{GROUNDS[basis]}</summary>
      <p class="help">
        {GROUNDS_SAY[basis]} {source}
      </p>
      <a class="act-link" href={at("sure")}>
        {NOTES.sureOfAll}
      </a>
    </details>
  );
}
