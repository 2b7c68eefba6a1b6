// How does a thumb come from the first screen to the first ranking? Nothing but a few small looks is asked of
// the page meanwhile: what Playwright brings along to find things would be the longest task of all.

export const PHONE = { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true };
/** Engines weighed: those that the first questions lead to by these words, and by the first order after them. */
export const ENGINES = [
  { name: "four, coil rail", count: "4", layout: "In one row", isKnown: true },
  { name: "six, coil rail", count: "6", layout: "In a V", isKnown: true },
  { name: "six, firing order not known", count: "6", layout: "In a V", isKnown: false },
];
const PATIENCE_MS = 30_000;

/**
 * The six questions, each answered by its first option, up to the ranking and the drive answer. Gives the
 * time of the last tap.
 */
export async function answerAll(page, engine = ENGINES[0], onAnswer = async () => undefined) {
  await tapOn(page, ".numbers a", engine.count);
  await tapOn(page, "a.option", engine.layout);
  await tapOn(page, "a.option", "A coil rail");
  await tapOn(
    page,
    engine.isKnown ? "button.option:not(.is-dashed)" : ".options:has(.is-dial) button.is-dashed",
  );
  // A question is read before it is answered.
  await onAnswer();
  let last = 0;
  let asked = "";
  for (;;) {
    const now = await until(
      page,
      (old) => {
        const heading = document.querySelector(".question h1")?.textContent;
        if (heading === undefined) return document.querySelector(".ranked-row") ? "" : undefined;
        return heading === old ? undefined : heading;
      },
      asked,
    );
    if (now === "") break;
    asked = now;
    last = Date.now();
    await tapOn(page, ".question .is-finish, .question:not(:has(.is-finish)) .option");
    await onAnswer();
  }
  await until(page, () => {
    const isThere = (selector) => document.querySelector(selector) !== null;
    return isThere(".ranking:not(.is-weighing) .ranked-row") && isThere(".drive-answer");
  });
  return last;
}

/** Taps on the first of what a selector finds that says this, once it is there. */
async function tapOn(page, selector, words = "") {
  const [x, y] = await until(
    page,
    ([wanted, text]) => {
      const found = [...document.querySelectorAll(wanted)].find((each) =>
        each.textContent.includes(text),
      );
      found?.scrollIntoView({ block: "nearest" });
      const box = found?.getBoundingClientRect();
      return box && [box.x + box.width / 2, box.y + box.height / 2];
    },
    [selector, words],
  );
  await page.touchscreen.tap(x, y);
}

/** What `look` finds in the page, once it finds something. */
export async function until(page, look, given) {
  const end = Date.now() + PATIENCE_MS;
  for (;;) {
    const found = await page.evaluate(look, given);
    if (found !== undefined && found !== false) return found;
    if (Date.now() > end) throw new Error(`Waited in vain: ${look}`);
    await page.waitForTimeout(50);
  }
}
