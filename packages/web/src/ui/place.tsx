// Where does the car stand, with what, and is it older than code readers? Asked around the first question, so that
// the first step can be done there.
import type { AtHand } from "@half-order/core";
import type { VNode } from "preact";
import { atHand } from "../state/case.ts";
import { chooseHand } from "../state/hand.ts";
import { hasPort, setPort } from "../state/port.ts";
import { at, goTo } from "../state/route.ts";
import { askFrom } from "../state/way.ts";
import { PLACE } from "../text/en-place.ts";

type Where = NonNullable<AtHand["where"]>;
type Tool = NonNullable<AtHand["tools"]>[number];

/** What is looked at before anything else, and asked for first where it is so. */
const ALARM = "alarm";
/** Of no use without a port. */
const READER: Tool = "code reader";

function Place(): VNode {
  const { where, tools } = atHand.value ?? {};
  return (
    <div class="place">
      <fieldset class="targets">
        <legend>{PLACE.where}</legend>
        {Object.entries(PLACE.places).map(([place, say]) => (
          <Chip key={place} say={say} isOn={where === place} onClick={() => go(place as Where)} />
        ))}
      </fieldset>
      <a class="act-link" href={askFrom("question", ALARM)}>
        {PLACE.alarm}
      </a>
      {where && (
        <fieldset class="targets">
          <legend>{PLACE.tools}</legend>
          <Chip
            say={PLACE.bare}
            isOn={tools?.length === 0}
            onClick={() => chooseHand({ ...atHand.value, tools: [] })}
          />
          {Object.entries(PLACE.few).map(
            ([tool, say]) =>
              (hasPort.value || tool !== READER) && (
                <Chip
                  key={tool}
                  say={say}
                  isOn={tools?.includes(tool as Tool) ?? false}
                  onClick={() => toggle(tool as Tool)}
                />
              ),
          )}
          <a class="target" href={at("hand", "question")}>
            {PLACE.all}
          </a>
        </fieldset>
      )}
    </div>
  );
}

/** Below the answers to a lamp or codes that such a car may not have. */
export function Port(): VNode {
  return (
    <fieldset class="targets">
      <legend>{PLACE.car}</legend>
      <Chip
        say={PLACE.noPort}
        isOn={!hasPort.value}
        onClick={() => {
          setPort(!hasPort.value);
          // The question that is open may not be asked of it.
          goTo("question");
        }}
      />
    </fieldset>
  );
}

// Both on what is there at the tap, which may come before the last one is drawn.

function go(place: Where): void {
  const { where, tools, ...others } = atHand.value ?? {};
  // What was in the car says nothing of a garage.
  const stays = tools && (where ?? place) === place;
  chooseHand({ ...others, ...(stays ? { tools } : {}), where: place });
}

function toggle(tool: Tool): void {
  const { tools = [], ...others } = atHand.value ?? {};
  const isThere = tools.includes(tool);
  chooseHand({
    ...others,
    tools: isThere ? tools.filter((other) => other !== tool) : [...tools, tool],
  });
}

export function Chip({
  say,
  isOn,
  onClick,
}: {
  say: string;
  isOn: boolean;
  onClick: () => void;
}): VNode {
  return (
    <button type="button" class="target" aria-pressed={isOn} onClick={onClick}>
      {say}
    </button>
  );
}

export { Place as Screen };
