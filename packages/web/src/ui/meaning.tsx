// What each result would mean, before the check is made: what would come next if it came out so.
import type { CylinderName, FindingRow, Ranking } from "@half-order/core";
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { partGroups } from "../state/group.ts";
import { rankingIf } from "../state/thinking.ts";
import { sayGroup } from "../text/answer.ts";
import { QUESTION, RANKING } from "../text/en.ts";
import { CHECK } from "../text/en-check.ts";
import { sayThen } from "./then.ts";

export interface MeaningProps {
  readonly row: FindingRow;
  /** Of which the answer would be; none where the finding is of the whole engine. */
  readonly cylinder: CylinderName | undefined;
  /** The cylinder, or all that its coil or connector serves. */
  readonly where: string | undefined;
}

/** One question after the other: the thread drops what it is asked when it is asked anew. */
let lane: Promise<unknown> = Promise.resolve();

/** Worked out when it is opened; only for findings with single answers. */
export function Meaning({ row, cylinder, where }: MeaningProps): VNode | null {
  const [meant, setMeant] = useState<ReadonlyMap<string, Ranking | undefined>>(new Map());
  const [isBroken, setBroken] = useState(false);
  const answers = answersOf(row);
  if (answers.length === 0) return null;
  const open = async (): Promise<void> => {
    let next = new Map<string, Ranking | undefined>();
    for (const [answer] of answers) {
      next = new Map(next).set(answer, await rankingIf(row.id, answer, cylinder));
      setMeant(next);
    }
  };
  const queue = (): void => {
    lane = lane.then(open).then(
      () => setBroken(false),
      () => setBroken(true),
    );
  };
  const missing = isBroken ? CHECK.notWeighed : RANKING.weighing;
  return (
    <details
      class="meaning"
      onToggle={(event) => {
        if (event.currentTarget.open) queue();
      }}
    >
      <summary>
        <h4>
          {CHECK.mean}
          {where !== undefined && CHECK.meanAt(where)}
        </h4>
      </summary>
      <dl>
        {answers.map(([answer, say]) => {
          const leader = leaderOf(meant.get(answer));
          return (
            <div key={answer} class="fact">
              <dt>{say}</dt>
              <dd>{sayThen([{ finding: row.id, answer }], leader) ?? missing}</dd>
            </div>
          );
        })}
      </dl>
    </details>
  );
}

/** The first row of the ranking, in its words. */
function leaderOf(ranking: Ranking | undefined): Parameters<typeof sayThen>[1] {
  const [first] = ranking ? partGroups(ranking) : [];
  return first && { name: sayGroup(first), probability: first.probability };
}

function answersOf({ kind, options }: FindingRow): readonly (readonly [string, string])[] {
  if (kind === "choice") return Object.entries(options).map(([id, { say }]) => [id, say]);
  if (kind !== "presence") return [];
  return [
    ["yes", Object.values(options)[0]?.say ?? QUESTION.yes],
    ["no", QUESTION.no],
  ];
}
