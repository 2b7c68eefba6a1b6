// The invented engines, to try the page on.
import { allProfiles, resolveEngine } from "@half-order/core";
import type { VNode } from "preact";
import { Dial } from "../diagram/dial.tsx";
import { chooseEngine } from "../state/begin.ts";
import { sayEngine } from "../text/answer.ts";
import { DEMO } from "../text/en-shelf.ts";
import { Heading } from "../ui/heading.tsx";

function Demo(): VNode {
  return (
    <section class="column">
      <Heading of="demo">{DEMO.title}</Heading>
      <p class="help">{DEMO.help}</p>
      <div class="options">
        {allProfiles()
          .filter(({ invented }) => invented)
          .map((profile) => (
            <button
              key={profile.id}
              type="button"
              class="option has-picture"
              onClick={() => chooseEngine(profile.id ?? profile)}
            >
              <span class="thumb">
                <Dial engine={resolveEngine(profile)} />
              </span>
              <span class="words">
                {profile.name}
                <small>
                  {sayEngine(profile)}, {DEMO.invented}
                </small>
              </span>
            </button>
          ))}
      </div>
    </section>
  );
}

export { Demo as Screen };
