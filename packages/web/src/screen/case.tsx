// The open case: one thing at a time on a phone; picture, ranking and question side by side on a desk.
import { computed } from "@preact/signals";
import type { ComponentChildren, VNode } from "preact";
import { SCREENS } from "../screens.ts";
import { findings, profile } from "../state/case.ts";
import { findingRow } from "../state/catalogue.ts";
import { hasAllFindings } from "../state/prose.ts";
import { screen } from "../state/route.ts";
import { isDesk } from "../state/view.ts";
import { backAddress, openQuestion } from "../state/way.ts";
import { LAZY } from "../text/en.ts";
import { NextCheck } from "../ui/check-panel.tsx";
import { QuestionFoot, RankingFoot } from "../ui/foot.tsx";
import { Lazy } from "../ui/lazy.tsx";
import { BlockPicture, DialPicture } from "../ui/picture.tsx";
import { RankingNotes, RankingPanel } from "./ranking.tsx";

/** The first questions and the ranking that follows them do without the rows of other findings. */
const needsAll = computed(() => {
  const asks = screen.value === "question" ? openQuestion.value?.first === undefined : false;
  const isOther = asks || (screen.value !== "question" && screen.value !== "ranking");
  return isDesk.value || isOther || findings.value.some((given) => !isFirst(given.finding));
});

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
      <div class="desk-picture">
        <DialPicture />
        <BlockPicture />
      </div>
      <div class="desk-ranking">
        <RankingPanel />
        <RankingNotes />
      </div>
      <div class="desk-act">{children ?? <NextCheck />}</div>
    </main>
  );
}

function Phone({ children }: Frame): VNode {
  return (
    <>
      <main class="phone">
        {children ?? (
          <>
            <DialPicture />
            <RankingPanel />
            <BlockPicture />
            <NextCheck />
            <RankingNotes />
          </>
        )}
      </main>
      {children ? <QuestionFoot back={backAddress()} /> : <RankingFoot />}
    </>
  );
}
