// Which screen: one thing at a time on a phone; picture, ranking and question side by side on a desk.
import type { VNode } from "preact";
import { Add } from "./screen/add.tsx";
import { Answers } from "./screen/answers.tsx";
import { Check } from "./screen/check.tsx";
import { Demo } from "./screen/demo.tsx";
import { Pick } from "./screen/pick.tsx";
import { backFrom, Question } from "./screen/question.tsx";
import { RankingNotes, RankingPanel } from "./screen/ranking.tsx";
import { SketchScreen } from "./screen/sketch.tsx";
import { Start } from "./screen/start.tsx";
import { findings, openCase, profile } from "./state/case.ts";
import { checkRow, findingRow } from "./state/catalogue.ts";
import { saveCaseFile } from "./state/file.ts";
import { storeTrouble } from "./state/keep.ts";
import { at, path, screen, subject } from "./state/route.ts";
import { isDesk } from "./state/view.ts";
import { sayProfile } from "./text/answer.ts";
import { ADD, ANSWERS, NAME, PAGE, STORE } from "./text/en.ts";
import { NextCheck } from "./ui/check-panel.tsx";
import { LeaderNews, QuestionFoot, RankingFoot } from "./ui/foot.tsx";
import { BlockPicture, DialPicture } from "./ui/picture.tsx";

export function App(): VNode {
  const body = bodyOf();
  return (
    <>
      <Head isInCase={body.isInCase} />
      {storeTrouble.value && (
        <p class="trouble" role="alert">
          {STORE[storeTrouble.value]}{" "}
          {openCase.value && (
            <button type="button" class="quiet" onClick={saveCaseFile}>
              {ANSWERS.save}
            </button>
          )}
        </p>
      )}
      <LeaderNews />
      {body.node}
    </>
  );
}

interface Body {
  readonly node: VNode;
  readonly isInCase: boolean;
}

function bodyOf(): Body {
  switch (screen.value) {
    case "pick":
      return outside(<Pick key={path.value.join("/")} />);
    case "demo":
      return outside(<Demo />);
    case "sketch":
      return outside(<SketchScreen />);
  }
  const known = screen.value !== "" && openCase.value && profile.value;
  if (!known) return outside(<Start />);
  return { isInCase: true, node: isDesk.value ? <Desk /> : <Phone /> };
}

function outside(node: VNode): Body {
  return { isInCase: false, node: <main class="outside">{node}</main> };
}

function Desk(): VNode {
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
      <div class="desk-act">{panel() ?? <NextCheck />}</div>
    </main>
  );
}

function Phone(): VNode {
  const row = screen.value === "question" ? findingRow(subject.value) : undefined;
  const own = panel();
  return (
    <>
      <main class="phone">
        {own ?? (
          <>
            <DialPicture />
            <RankingPanel />
            <BlockPicture />
            <NextCheck />
            <RankingNotes />
          </>
        )}
      </main>
      {own ? <QuestionFoot back={row ? backFrom(row) : at("ranking")} /> : <RankingFoot />}
    </>
  );
}

/** What the address asks for beside picture and ranking. */
function panel(): VNode | undefined {
  const row = findingRow(subject.value);
  const check = checkRow(subject.value);
  if (screen.value === "question" && row) return <Question key={row.id} row={row} />;
  if (screen.value === "check" && check) return <Check key={check.id} check={check} />;
  if (screen.value === "add") return <Add />;
  if (screen.value === "answers") return <Answers />;
  return undefined;
}

function Head({ isInCase }: { isInCase: boolean }): VNode {
  return (
    <header class="head">
      <a class="brand" href={at()}>
        <svg viewBox="-12 -12 24 24" aria-hidden="true">
          <circle r="10" />
          <path d="M-5 8.66L5 -8.66" />
        </svg>
        <span class={isInCase ? "brand-name" : undefined}>{NAME}</span>
      </a>
      {isInCase && openCase.value && (
        <nav aria-label={PAGE.nav}>
          <span class="engine-name">{sayProfile(openCase.value.doc.engine)}</span>
          {isDesk.value && (
            <>
              <a href={at("ranking")}>{PAGE.next}</a>
              <a href={at("add")}>{ADD.title}</a>
            </>
          )}
          <a href={at("answers")}>{ANSWERS.link(findings.value.length)}</a>
        </nav>
      )}
    </header>
  );
}
