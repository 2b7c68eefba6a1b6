// Handing over: one page to print, and a link that carries the case in itself.
import type { VNode } from "preact";
import { useEffect } from "preact/hooks";
import { QrSquare, Share, useCaseLink } from "../hand-over/share.tsx";
import { Sheet } from "../hand-over/sheet.tsx";
import { engines, openCase, profile } from "../state/case.ts";
import { drive, followDrive } from "../state/drive.ts";
import { seemsMended } from "../state/mended.ts";
import { saveCaseFile } from "../state/save-file.ts";
import { isWeighing, ranking } from "../state/thinking.ts";
import { drawn, look } from "../state/view.ts";
import { ANSWERS } from "../text/en.ts";
import { LINK, SHEET } from "../text/en-hand-over.ts";
import { REPAIRED } from "../text/en-repaired.ts";
import { Heading } from "../ui/heading.tsx";
import { useProven } from "../ui/proof-so-far.ts";
import "../style/hand-over.css";

/** Reads the open case; shows nothing when none is open or its engine is not sound. */
function HandOver(): VNode | null {
  const kept = openCase.value;
  const engine = drawn.value;
  const link = useCaseLink(kept?.doc);
  useEffect(followDrive, []);
  // What was answered before the repair tells of another engine.
  const proven = useProven();
  const repaired = proven === undefined ? REPAIRED.unproven : REPAIRED.proven(proven);
  const driving = seemsMended(kept?.doc.repairs ?? []) ? repaired : drive.value?.level?.say;
  const known = profile.value;
  if (!kept || !engine || !known) return null;
  return (
    <section class="hand-over">
      <div class="hand-over-ways">
        <Heading of="hand-over">{SHEET.title}</Heading>
        <button type="button" class="option is-finish" onClick={() => print()}>
          {SHEET.print}
        </button>
        <Share link={link} />
        <QrSquare link={link} caption={LINK.qr} />
        <ul class="links">
          <li>
            <button type="button" onClick={() => saveCaseFile()}>
              {ANSWERS.save}
            </button>
          </li>
        </ul>
      </div>
      <Sheet
        doc={kept.doc}
        profile={known}
        engine={engine}
        isVague={engines.value.length > 1}
        ranking={isWeighing.value ? undefined : ranking.value}
        look={look.value}
        changed={kept.changed}
        {...(driving === undefined ? {} : { driving })}
      >
        <div class="sheet-qr">
          <QrSquare link={link} caption={SHEET.scan} />
        </div>
      </Sheet>
    </section>
  );
}

export { HandOver as Screen };
