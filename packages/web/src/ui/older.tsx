// Is the engine older than electronics and injection? Asked beside the port for a code reader, of engines with a
// distributor.
import type { VNode } from "preact";
import { profile } from "../state/case.ts";
import { olderHere, olderParts, toggleOlder } from "../state/older.ts";
import { goTo } from "../state/route.ts";
import { OLDER } from "../text/en-older.ts";
import { Chip } from "./place.tsx";

function Older(): VNode {
  return (
    <fieldset class="targets">
      <legend>{OLDER.asked}</legend>
      {olderParts(profile.value?.ignition).map((part) => (
        <Chip
          key={part}
          say={OLDER.short[part]}
          isOn={olderHere.value.includes(part)}
          onClick={() => {
            toggleOlder(part);
            // The question that is open may not be asked of it.
            goTo("question");
          }}
        />
      ))}
    </fieldset>
  );
}

export { Older as Screen };
