// Which screen stands on the page, under which head, and what the page has to say beside it.
import type { VNode } from "preact";
import { CASE } from "./case-entry.ts";
import { NOWHERE } from "./parts.ts";
import { Start } from "./screen/start.tsx";
import { SCREENS, type ScreenEntry } from "./screens.ts";
import {
  canRedo,
  canUndo,
  findings,
  isClosed,
  openCase,
  profile,
  redo,
  undo,
} from "./state/case.ts";
import { arrivals, at, path, screen } from "./state/route.ts";
import { isDesk } from "./state/view.ts";
import { sayCase } from "./text/answer.ts";
import { ADD, ANSWERS, NAME, PAGE, RANKING, UNDO } from "./text/en.ts";
import { LeaderNews } from "./ui/foot.tsx";
import { Lazy } from "./ui/lazy.tsx";
import { PageNews } from "./ui/news.tsx";

/** The screen that the address asks for; `undefined` for the first one. */
export function currentEntry(): ScreenEntry | undefined {
  const entry = SCREENS[screen.value];
  if (entry?.frame === "outside" || screen.value === "") return entry;
  if (!profile.value || !(entry || screen.value === "ranking")) return NOWHERE;
  return entry?.frame === "wide" ? entry : CASE;
}

/** True where the screen is about the open case. */
export function isInCase(): boolean {
  return (currentEntry()?.frame ?? "outside") !== "outside";
}

export function App(): VNode {
  const entry = currentEntry();
  return (
    <>
      <Head isInCase={isInCase()} />
      <PageNews />
      <LeaderNews />
      {entry === CASE ? <Lazy entry={CASE} /> : <main class="outside">{outside(entry)}</main>}
    </>
  );
}

/** First for the keyboard: past head, picture and ranking, to the heading of what is asked or to be done. */
function Skip(): VNode {
  return (
    <button
      type="button"
      class="skip"
      onClick={() => {
        arrivals.value += 1;
      }}
    >
      {PAGE.skip}
    </button>
  );
}

function outside(entry: ScreenEntry | undefined): VNode {
  return entry ? <Lazy key={path.value.join("/")} entry={entry} /> : <Start />;
}

function Head({ isInCase }: { isInCase: boolean }): VNode {
  return (
    <header class="head">
      <Skip />
      <a class="brand" href={at()}>
        <svg viewBox="-12 -12 24 24" aria-hidden="true">
          <circle r="10" />
          <path d="M-5 8.66L5 -8.66" />
        </svg>
        <span class={isInCase ? "brand-name" : undefined}>{NAME}</span>
      </a>
      <nav aria-label={PAGE.nav}>
        {isInCase && openCase.value && (
          <>
            <span class="engine-name">{sayCase(openCase.value.doc)}</span>
            {isDesk.value && (
              <>
                <Steps />
                <a href={at("ranking")}>{isClosed.value ? RANKING.mended : PAGE.next}</a>
                {!isClosed.value && <a href={at("add")}>{ADD.title}</a>}
              </>
            )}
            <a href={at("answers")}>{ANSWERS.link(findings.value.length)}</a>
          </>
        )}
        <a href={at("more")}>{PAGE.more}</a>
      </nav>
    </header>
  );
}

function Steps(): VNode {
  return (
    <span class="steps-back">
      <button type="button" class="quiet" disabled={!canUndo.value} onClick={undo}>
        {UNDO.undo}
      </button>
      <button type="button" class="quiet" disabled={!canRedo.value} onClick={redo}>
        {UNDO.redo}
      </button>
    </span>
  );
}
