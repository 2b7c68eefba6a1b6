// What does the page say before its scripts have come? Its first screen as text, for the document.
import { demoProfiles, resolveEngine } from "@half-order/core";
import type { VNode } from "preact";
import { renderToString } from "preact-render-to-string";
import { Dial } from "./src/diagram/dial.tsx";
import { START } from "./src/text/en.ts";
import { DOCUMENT } from "./src/text/en-document.ts";

// What a browser has and the first screen asks for; of a channel to other tabs the build would never end.
Object.assign(globalThis, { location: { hash: "" } });
Reflect.deleteProperty(globalThis, "BroadcastChannel");
const { App } = await import("./src/app.tsx");

const EMPTY_HERO = '<figure class="hero"></figure>';

/** The first screen with its picture, which stands in the document alone (see `Hero` in `screen/start.tsx`). */
export function firstScreenHtml(): string {
  const html = renderToString(<App />);
  if (!html.includes(EMPTY_HERO)) throw new Error(`The first screen has no ${EMPTY_HERO}.`);
  return html.replace(EMPTY_HERO, renderToString(<Hero />));
}

/** Stands above it, and is seen when a script has not come. */
export function lostHtml(): string {
  return renderToString(
    <p class="lost trouble" role="alert">
      {DOCUMENT.lost}
    </p>,
  );
}

function Hero(): VNode {
  const [example] = demoProfiles();
  if (!example) throw new Error("There is no invented engine to show.");
  return (
    <figure class="hero">
      <Dial engine={resolveEngine(example)} />
      <figcaption class="caption">{START.dial}</figcaption>
    </figure>
  );
}
