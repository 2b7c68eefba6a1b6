// Who has set larger letters on a phone: is all of each screen still there, without scrolling sideways?
import { describe, expect, it } from "vitest";
import { CHROMIUM, openPage, PHONE, settled, useStage } from "../helper/page.ts";
import { openCase, PAIR_DOC } from "../helper/room.ts";

const stage = useStage();

const SCREENS = [
  "ranking",
  "question/lamp",
  "answers",
  "drive",
  "mend/repair.rail",
  "record",
  "more",
];
/** What the browser takes for one letter, CSS px; as delivered it is 16. */
const LETTERS_PX = 24;
/** Edges that fall between two pixels. */
const SLACK_PX = 1;

describe.skipIf(!CHROMIUM)("letters half as large again", () => {
  it("leave every screen as wide as the phone", async () => {
    const page = await openPage(stage, PHONE);
    await openCase(stage, page, PAIR_DOC);
    const session = await page.context().newCDPSession(page);
    const fontSizes = { standard: LETTERS_PX, fixed: LETTERS_PX };
    await session.send("Page.setFontSizes", { fontSizes });
    for (const screen of SCREENS) {
      await page.goto(`${stage.address}#/${screen}`);
      await settled(page);
      const [over, letter] = await page.evaluate(() => [
        document.documentElement.scrollWidth - document.documentElement.clientWidth,
        Number.parseFloat(getComputedStyle(document.documentElement).fontSize),
      ]);
      expect(letter, screen).toBe(LETTERS_PX);
      expect(over, screen).toBeLessThanOrEqual(SLACK_PX);
    }
  });
});
