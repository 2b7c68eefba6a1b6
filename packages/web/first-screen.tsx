// What does the page say before its scripts have come? Its first screen as text, for the document.
import { renderToString } from "preact-render-to-string";

// What a browser has and the first screen asks for; of a channel to other tabs the build would never end.
Object.assign(globalThis, { location: { hash: "" } });
Reflect.deleteProperty(globalThis, "BroadcastChannel");
const { App } = await import("./src/app.tsx");

export function firstScreenHtml(): string {
  return renderToString(<App />);
}
