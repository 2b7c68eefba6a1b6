// The open case: one thing at a time on a phone; picture, ranking and question side by side on a desk.
import { computed } from "@preact/signals";
import type { ComponentChildren, VNode } from "preact";
import { DRIVE_ANSWER, NEXT_STEP, SCREENS } from "../screens.ts";
import { findings, profile } from "../state/case.ts";
import { findingRow } from "../state/catalogue.ts";
import { hasAllFindings } from "../state/prose.ts";
import { screen } from "../state/route.ts";
import { ranking } from "../state/thinking.ts";
import { isDesk } from "../state/view.ts";
import { backAddress, openQuestion } from "../state/way.ts";
import { LAZY } from "../text/en.ts";
import { QuestionFoot, RankingFoot } from "../ui/foot.tsx";
import { Lazy } from "../ui/lazy.tsx";
import { BlockPicture, DialPicture } from "../ui/picture.tsx";
import { RankingNotes, RankingPanel } from "./ranking.tsx";

/** Screens that show no finding but those given, and so the question's own. */
const WITHOUT = ["question", "ranking", "drive"];

/** The first questions and the ranking that follows them do without the rows of other findings. */
const needsAll = computed(() => {
  const asks = screen.value === "question" ? openQuestion.value?.first === undefined : false;
  const isOther = asks || !WITHOUT.includes(screen.value);
  return isDesk.value || isOther || findings.value.some((given) => !isFirst(given.finding));
});

/** Nothing can be said of driving before the first question is answered. */
const hasDrive = computed(() => findings.value.length > 0 || screen.value !== "question");

export function CaseScreen(): VNode | null {
  const entry = SCREENS[screen.value];
  const own = entry?.frame === "panel" ? <Lazy key={screen.value} entry={entry} /> : undefined;
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
  return (
    <main class="desk">
      {hasDrive.value && <Lazy entry={DRIVE_ANSWER} />}
      <div class="desk-picture">
        <DialPicture />
        <BlockPicture />
      </div>
      <div class="desk-ranking">
        <RankingPanel />
        <RankingNotes />
      </div>
      <div class="desk-act">{children ?? <Lazy entry={NEXT_STEP} />}</div>
    </main>
  );
}

function Phone({ children }: Frame): VNode {
  return (
    <>
      <main class="phone">
        {hasDrive.value && <Lazy entry={DRIVE_ANSWER} />}
        {children ?? (
          <>
            <DialPicture />
            <RankingPanel />
            {ranking.value && <Lazy entry={NEXT_STEP} />}
            <BlockPicture />
            <RankingNotes />
          </>
        )}
      </main>
      {children ? <QuestionFoot back={backAddress()} /> : <RankingFoot />}
    </>
  );
}
