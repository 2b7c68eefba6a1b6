// Where is a Chromium for the browser tests? Answers with a path, or "" when there is none.
import { existsSync } from "node:fs";

const USUAL_PLACES = [
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/snap/bin/chromium",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
  "C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe",
];

export const SKIPPED_LINE =
  "Browser tests will be SKIPPED: no Chromium found (install one, or set CHROMIUM_PATH)";

/** CHROMIUM_PATH wins when it is set, even when it is empty: that is how to skip on purpose. */
export function findChromium() {
  return process.env.CHROMIUM_PATH ?? USUAL_PLACES.find((path) => existsSync(path)) ?? "";
}
