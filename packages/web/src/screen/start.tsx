// The first screen: safe first, then the number of cylinders, or another way in.
import { cylinderCounts } from "@half-order/core";
import type { VNode } from "preact";
import { useEffect } from "preact/hooks";
import { SHELF } from "../parts.ts";
import { lookAtShelf, shelf } from "../state/keep.ts";
import { at } from "../state/route.ts";
import { isKeptOffline } from "../state/update.ts";
import { START } from "../text/en.ts";
import { SafeFirst } from "../ui/caution.tsx";
import { FileWay } from "../ui/file-way.tsx";
import { Heading } from "../ui/heading.tsx";
import { Lazy } from "../ui/lazy.tsx";

/** Each way is called as its address: one that was tapped before the scripts have come is then the target. */
export function Start(): VNode {
  useEffect(() => {
    void lookAtShelf();
  }, []);
  return (
    <div class="start">
      <SafeFirst />
      <div class="start-words">
        <Heading of="start" class="act">
          {START.title}
        </Heading>
        <p class="lead">{START.lead}</p>
        <Hero />
      </div>
      <div class="start-ways">
        {shelf.value.length > 0 && <Lazy entry={SHELF} />}
        <h2 class="title">{START.ask}</h2>
        <div class="numbers">
          {cylinderCounts().map((count) => (
            <a key={count} class="number" id={`/pick/${count}`} href={at("pick", String(count))}>
              {count}
            </a>
          ))}
        </div>
        <h2 class="minor">{START.other}</h2>
        <ul class="links">
          <Way to="demo" say={START.demo} more={START.demoMore} />
          <Way to="sketch" say={START.sketch} more={START.sketchMore} />
          <Way to="hand" say={START.hand} more={START.handMore} />
          <li>
            <FileWay />
          </li>
        </ul>
        {isKeptOffline.value !== undefined && (
          <p class="fine">{isKeptOffline.value ? START.offline : START.notOffline}</p>
        )}
      </div>
    </div>
  );
}

/** The figure as it stands in the document, where the build has drawn it: what never changes is drawn by nobody's phone. */
const hero = typeof document === "undefined" ? "" : document.querySelector(".hero")?.innerHTML;

function Hero(): VNode {
  return <figure class="hero" dangerouslySetInnerHTML={{ __html: hero ?? "" }} />;
}

function Way({ to, say, more }: { to: string; say: string; more: string }): VNode {
  return (
    <li>
      <a id={`/${to}`} href={at(to)}>
        {say}
        <small>{more}</small>
      </a>
    </li>
  );
}
