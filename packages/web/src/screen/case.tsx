// The open case: one thing at a time on a phone; picture, ranking and question side by side on a desk.
import { computed } from "@preact/signals";
import type { ComponentChildren, VNode } from "preact";
import { Dial, DialRoom } from "../diagram/dial.tsx";
import {
  BLOCK_PICTURE,
  DIAL_PICTURE,
  DRIVE_ANSWER,
  MENDED,
  NEXT_STEP,
  RANKING_NOTES,
  SCREENS,
} from "../screens.ts";
import { findings, isClosed, profile } from "../state/case.ts";
import { findingRow } from "../state/catalogue.ts";
import { ticked } from "../state/draft.ts";
import { hasAllFindings } from "../state/prose.ts";
import { screen } from "../state/route.ts";
import { ranking } from "../state/thinking.ts";
import { drawn, isDesk } from "../state/view.ts";
import { backAddress, openQuestion } from "../state/way.ts";
import { LAZY, PAGE, PICTURE } from "../text/en.ts";
import { QuestionFoot, RankingFoot } from "../ui/foot.tsx";
import { Later } from "../ui/later.tsx";
import { Lazy } from "../ui/lazy.tsx";
import { RankingPanel } from "./ranking.tsx";

/** Screens that show no finding but those given, and so the question's own. */
const WITHOUT = ["question", "ranking", "drive"];

/** The first questions and the ranking that follows them do without the rows of other findings. */
const needsAll = computed(() => {
  const asks = screen.value === "question" ? openQuestion.value?.first === undefined : false;
  const isOther = asks || !WITHOUT.includes(screen.value);
  return isDesk.value || isOther || findings.value.some((given) => !isFirst(given.finding));
});

/** Nothing can be said of driving before the first question is answered. */
const hasDrive = computed(
  () => findings.value.length + ticked.value.length > 0 || screen.value !== "question",
);

function CaseScreen(): VNode | null {
  const entry = SCREENS[screen.value];
  // The proof of a closed case is told where the ranking stood.
  const isTold = isClosed.value && screen.value === "proof";
  const own =
    entry?.frame === "panel" && !isTold ? <Lazy key={screen.value} entry={entry} /> : undefined;
  if (!profile.value) return null;
  if (needsAll.value && !hasAllFindings()) return <main class="help lazy">{LAZY.coming}</main>;
  return isDesk.value ? <Desk>{own}</Desk> : <Phone>{own}</Phone>;
}

function isFirst(finding: string): boolean {
  return findingRow(finding)?.first !== undefined;
}

interface Frame {
  /** What the address asks for beside picture and ranking. */
  readonly children: ComponentChildren;
}

function Desk({ children }: Frame): VNode {
  const act = children ?? (!isClosed.value && <Lazy entry={NEXT_STEP} />);
  return (
    <main class="desk">
      {hasDrive.value && <Lazy entry={DRIVE_ANSWER} />}
      <div class="desk-picture">
        {isClosed.value ? (
          drawn.value && <Dial engine={drawn.value} />
        ) : (
          <>
            <DialLater />
            <Later>
              <Lazy entry={BLOCK_PICTURE} />
            </Later>
          </>
        )}
      </div>
      <div class="desk-ranking">
        {isClosed.value ? (
          <Lazy entry={MENDED} />
        ) : (
          <>
            <RankingPanel />
            <Later>
              <Lazy entry={RANKING_NOTES} />
            </Later>
          </>
        )}
      </div>
      {act && (
        <section class="desk-act" aria-label={PAGE.act}>
          {act}
        </section>
      )}
    </main>
  );
}

function DialLater(): VNode {
  return (
    <Later meanwhile={<DialComing />}>
      <Lazy entry={DIAL_PICTURE} meanwhile={<DialComing />} />
    </Later>
  );
}

function DialComing(): VNode {
  return (
    <section class="picture">
      <DialRoom />
      <p class="caption">{PICTURE.dial}</p>
    </section>
  );
}

function Ranked(): VNode {
  return (
    <>
      <DialLater />
      <RankingPanel />
      {ranking.value && (
        <>
          <Later>
            <Lazy entry={NEXT_STEP} />
          </Later>
          <Later>
            <Lazy entry={BLOCK_PICTURE} />
          </Later>
          <Later>
            <Lazy entry={RANKING_NOTES} />
          </Later>
        </>
      )}
    </>
  );
}

function Phone({ children }: Frame): VNode {
  return (
    <>
      <main class="phone">
        {hasDrive.value && <Lazy entry={DRIVE_ANSWER} />}
        {children ?? (isClosed.value ? <Lazy entry={MENDED} /> : <Ranked />)}
      </main>
      {children ? <QuestionFoot back={backAddress()} /> : <RankingFoot />}
    </>
  );
}

export { CaseScreen as Screen };
