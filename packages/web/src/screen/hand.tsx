// What is at hand: place, tools, skill and prices, so that what is offered can also be done.
import { type AtHand, CHECKS, holdsTool, type Tool, toolsIn } from "@half-order/core";
import type { ComponentChildren, VNode } from "preact";
import { useState } from "preact/hooks";
import { openCase, profile } from "../state/case.ts";
import { chooseHand, hand, isHandKept } from "../state/hand.ts";
import { isOfUse } from "../state/of-use.ts";
import { olderHere, olderParts, toggleOlder } from "../state/older.ts";
import { hasPort, setPort } from "../state/port.ts";
import { hasAllFindings } from "../state/prose.ts";
import { at, path } from "../state/route.ts";
import { CHECK } from "../text/en-check.ts";
import { OLDER } from "../text/en-older.ts";
import { HAND } from "../text/en-shelf.ts";
import { Heading } from "../ui/heading.tsx";
import { Option } from "../ui/option.tsx";

type Where = NonNullable<AtHand["where"]>;
type Skill = NonNullable<AtHand["skill"]>;

const PLACES = Object.keys(HAND.places) as readonly Where[];
/** All but bare hands, which are always there. */
const TOOLS = Object.keys(CHECK.tools).filter((tool) => tool !== "none") as readonly Tool[];

function Hand(): VNode {
  const now = handNow();
  return (
    <section class="column">
      <Heading of="hand">{HAND.title}</Heading>
      <p class="help">{HAND.help}</p>
      <Group title={HAND.where}>
        {PLACES.map((where) => (
          <Option
            key={where}
            say={HAND.places[where] ?? where}
            isGiven={now.where === where}
            onClick={() => (now.where === where ? set({}, "where") : set({ where }))}
          />
        ))}
      </Group>
      <Group title={HAND.tools}>
        <Option
          say={HAND.bareHands}
          isGiven={now.tools?.length === 0}
          onClick={() => (now.tools?.length === 0 ? set({}, "tools") : set({ tools: [] }))}
        />
        {toolsShown(now).map((tool) => (
          <Option
            key={tool}
            say={CHECK.tools[tool] ?? tool}
            isGiven={holds(now, tool)}
            isSeveral
            onClick={() => set({ tools: toggled(handNow().tools ?? [], tool) })}
          />
        ))}
      </Group>
      {openCase.value && (
        <Group title={HAND.car}>
          <Option
            say={HAND.noPort}
            isGiven={!hasPort.value}
            isSeveral
            onClick={() => setPort(!hasPort.value)}
          />
          {olderParts(profile.value?.ignition).map((part) => (
            <Option
              key={part}
              say={OLDER.whole[part]}
              isGiven={olderHere.value.includes(part)}
              isSeveral
              onClick={() => toggleOlder(part)}
            />
          ))}
        </Group>
      )}
      <Group title={HAND.skill}>
        {CHECK.skills.map((say, skill) => (
          <Option
            key={say}
            say={say}
            isGiven={now.skill === skill}
            onClick={() =>
              now.skill === skill ? set({}, "skill") : set({ skill: skill as Skill })
            }
          />
        ))}
      </Group>
      <Prices now={now} />
      <p class="fine">{isHandKept.value ? HAND.kept : HAND.notKept}</p>
      <a class="option is-finish" href={backFrom()}>
        {HAND.done}
      </a>
    </section>
  );
}

/** To where it was reached from, where the address says so. */
function backFrom(): string {
  const [, ...from] = path.value;
  if (from.length > 0) return at(...from);
  return openCase.value ? at("ranking") : at();
}

/** Of the open case, or of whoever begins the next. */
function handNow(): AtHand {
  return openCase.value?.doc.atHand ?? hand.value ?? {};
}

/** On what is there at the tap, which may come before the last one is drawn. */
function set(part: Partial<AtHand>, ...without: readonly (keyof AtHand)[]): void {
  const next = Object.entries({ ...handNow(), ...part }).filter(
    ([field]) => !without.includes(field as keyof AtHand),
  );
  chooseHand(Object.fromEntries(next));
}

function holds({ tools }: AtHand, tool: Tool): boolean {
  return tools !== undefined && holdsTool(tools, tool);
}

/** What the engine of the open case can do with, and all that was ticked before. */
function toolsShown(now: AtHand): readonly Tool[] {
  const known = profile.value;
  if (!known || !hasAllFindings()) return TOOLS;
  return TOOLS.filter((tool) => holds(now, tool) || isOfUse(tool, known, CHECKS));
}

function toggled(before: NonNullable<AtHand["tools"]>, tool: Tool): readonly Tool[] {
  const tools = toolsIn(before);
  const isThere = tools.includes(tool);
  return TOOLS.filter((other) => (other === tool ? !isThere : tools.includes(other)));
}

function Group({ title, children }: { title: string; children: ComponentChildren }): VNode {
  return (
    <fieldset class="choices">
      <legend>{title}</legend>
      <div class="options is-tight">{children}</div>
    </fieldset>
  );
}

function Prices({ now }: { now: AtHand }): VNode {
  const parts = now.partsPrice ?? {};
  const setPart = (size: keyof typeof parts, price: number | undefined): void => {
    const { [size]: _, ...rest } = handNow().partsPrice ?? {};
    set({ partsPrice: price === undefined ? rest : { ...rest, [size]: price } });
  };
  return (
    <fieldset class="choices">
      <legend>{HAND.prices}</legend>
      <p class="help">{HAND.pricesHelp}</p>
      <Price
        say={HAND.hourRate}
        price={now.hourRate}
        onPrice={(hourRate) => (hourRate === undefined ? set({}, "hourRate") : set({ hourRate }))}
      />
      <Price say={HAND.small} price={parts.small} onPrice={(price) => setPart("small", price)} />
      <Price say={HAND.medium} price={parts.medium} onPrice={(price) => setPart("medium", price)} />
      <Price say={HAND.large} price={parts.large} onPrice={(price) => setPart("large", price)} />
      <Price
        say={HAND.callPrice}
        price={now.callPrice}
        onPrice={(callPrice) =>
          callPrice === undefined ? set({}, "callPrice") : set({ callPrice })
        }
      />
    </fieldset>
  );
}

interface PriceProps {
  readonly say: string;
  readonly price: number | undefined;
  readonly onPrice: (price: number | undefined) => void;
}

function Price({ say, price, onPrice }: PriceProps): VNode {
  const [text, setText] = useState(price === undefined ? "" : String(price));
  const value = Number(text.trim().replace(",", "."));
  const isWrong = text.trim() !== "" && !(value >= 0 && value <= 1e9);
  return (
    <label class={isWrong ? "field is-wrong" : "field"}>
      {say}
      <input
        inputMode="decimal"
        autocomplete="off"
        value={text}
        aria-invalid={isWrong}
        onInput={(event) => setText(event.currentTarget.value)}
        onChange={() => {
          if (!isWrong) onPrice(text.trim() === "" ? undefined : value);
        }}
      />
      <span aria-live="polite">{isWrong && <small class="wrong">{HAND.wrong}</small>}</span>
    </label>
  );
}

export { Hand as Screen };
