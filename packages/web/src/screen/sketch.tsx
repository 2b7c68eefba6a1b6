// An engine of one's own: typed, checked while it is typed, and drawn as soon as it is sound.
import {
  checkProfile,
  IGNITION_KINDS,
  type IgnitionKind,
  type Layout,
  type Problem,
  resolveEngine,
} from "@half-order/core";
import type { ComponentChildren, VNode } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { Block } from "../diagram/block.tsx";
import { Dial } from "../diagram/dial.tsx";
import { chooseEngine, isChange } from "../state/begin.ts";
import { type Older, olderHere, olderParts } from "../state/older.ts";
import { hasPort } from "../state/port.ts";
import { emptySketch, profileOf, type Sketch } from "../state/sketch.ts";
import { PICK } from "../text/en.ts";
import { OLDER } from "../text/en-older.ts";
import { HAND, SKETCH } from "../text/en-shelf.ts";
import { Heading } from "../ui/heading.tsx";
import { Option } from "../ui/option.tsx";

function SketchScreen(): VNode {
  // The car stays the same when its engine is described anew.
  const [sketch, setSketch] = useState<Sketch>(() =>
    isChange() ? { ...emptySketch, hasPort: hasPort.value, older: olderHere.value } : emptySketch,
  );
  const [isAsked, setAsked] = useState(false);
  const [refused, setRefused] = useState(0);
  const profile = profileOf(sketch);
  const problems = checkProfile(profile);
  const isSound = problems.length === 0;
  const set = (part: Partial<Sketch>): void => setSketch({ ...sketch, ...part });
  const fields = { sketch, set, problems: isAsked ? problems : [] };
  const engine = isSound && profile.firingOrder ? resolveEngine(profile) : undefined;
  return (
    <form
      class="sketch"
      noValidate
      // A field is judged when it is left, not while it is typed.
      onChange={() => setAsked(true)}
      onSubmit={(event) => {
        event.preventDefault();
        if (isSound) chooseEngine(profile, true);
        else {
          setAsked(true);
          setRefused(refused + 1);
        }
      }}
    >
      <div class="column">
        <Heading of="sketch">{SKETCH.title}</Heading>
        <Kind {...fields} />
        <Text {...fields} name="order" path="/firingOrder" help={SKETCH.orderHelp} />
        <Text {...fields} name="intervals" path="/firingIntervals" help={SKETCH.intervalsHelp} />
        <Text {...fields} name="banks" path="/banks" help={SKETCH.banksHelp} />
        <Text {...fields} name="name" path="/name" help="" />
        <Option
          say={HAND.noPort}
          isGiven={!sketch.hasPort}
          isSeveral
          onClick={() => set({ hasPort: !sketch.hasPort })}
        />
        {olderParts(sketch.ignition).map((part) => (
          <Option
            key={part}
            say={OLDER.whole[part]}
            isGiven={sketch.older.includes(part)}
            isSeveral
            onClick={() => set({ older: toggled(sketch.older, part) })}
          />
        ))}
        <button type="submit" class="option is-finish">
          {SKETCH.use}
        </button>
        {isAsked && !isSound && <Refused key={refused} of={problems} isPressed={refused > 0} />}
      </div>
      <div class="preview">
        {engine && (
          <>
            <Dial engine={engine} />
            <Block engine={engine} />
          </>
        )}
      </div>
    </form>
  );
}

function toggled(parts: readonly Older[], part: Older): readonly Older[] {
  return parts.includes(part) ? parts.filter((other) => other !== part) : [...parts, part];
}

interface RefusedProps {
  readonly of: readonly Problem[];
  /** The button was pressed, and not only a field left. */
  readonly isPressed: boolean;
}

/** What is wrong with all the fields, where the button is: they may be far out of sight. */
function Refused({ of, isPressed }: RefusedProps): VNode {
  const ref = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (isPressed) ref.current?.focus();
  }, [isPressed]);
  return (
    <div ref={ref} class="wrong" role="alert" tabIndex={-1}>
      <p>{SKETCH.wrong}:</p>
      <ul class="group">
        {of.map((problem) => (
          <li key={`${problem.path} ${problem.message}`}>
            {LABELS.find(([path]) => isAt(problem, path))?.[1]}: {sayProblem(problem)}
          </li>
        ))}
      </ul>
    </div>
  );
}

/** By path in the profile: what the field is called here. */
const LABELS = [
  ["/cylinders", SKETCH.cylinders],
  ["/layout", SKETCH.layout],
  ["/ignition", SKETCH.ignition],
  ["/firingOrder", SKETCH.order],
  ["/firingIntervals", SKETCH.intervals],
  ["/banks", SKETCH.banks],
  ["", SKETCH.title],
] as const;

/** In the words of the form, where those of the library are for who writes a file. */
function sayProblem({ code, message, hint }: Problem): string {
  if (code === "not-pairable")
    return SKETCH.notPairable(PICK.kinds["coil-per-plug"][0], PICK.kinds.distributor[0]);
  return `${message} ${hint}`;
}

interface FieldsProps {
  readonly sketch: Sketch;
  readonly set: (part: Partial<Sketch>) => void;
  readonly problems: readonly Problem[];
}

function Kind({ sketch, set, problems }: FieldsProps): VNode {
  return (
    <>
      <Field label={SKETCH.cylinders} wrong={about(problems, "/cylinders")}>
        <input
          inputMode="numeric"
          value={sketch.cylinders}
          onInput={(event) => set({ cylinders: event.currentTarget.value })}
        />
      </Field>
      <Field label={SKETCH.layout} wrong={about(problems, "/layout")}>
        <select
          value={sketch.layout}
          onChange={(event) => set({ layout: event.currentTarget.value as Layout | "" })}
        >
          <option value="">{SKETCH.layoutUnknown}</option>
          {Object.entries(PICK.layouts).map(([layout, say]) => (
            <option key={layout} value={layout}>
              {say}
            </option>
          ))}
        </select>
      </Field>
      <Field label={SKETCH.ignition} wrong={about(problems, "/ignition")}>
        <select
          value={sketch.ignition}
          onChange={(event) => set({ ignition: event.currentTarget.value as IgnitionKind })}
        >
          {IGNITION_KINDS.map((kind) => (
            <option key={kind} value={kind}>
              {PICK.kinds[kind][0]}
            </option>
          ))}
        </select>
      </Field>
    </>
  );
}

interface TextProps extends FieldsProps {
  readonly name: "order" | "intervals" | "banks" | "name";
  readonly path: string;
  readonly help: string;
}

function Text({ sketch, set, problems, name, path, help }: TextProps): VNode {
  return (
    <Field label={SKETCH[name]} help={help} wrong={about(problems, path)}>
      <input
        type="text"
        value={sketch[name]}
        autocomplete="off"
        spellcheck={false}
        onInput={(event) => set({ [name]: event.currentTarget.value })}
      />
    </Field>
  );
}

interface FieldProps {
  readonly label: string;
  readonly help?: string;
  readonly wrong: readonly Problem[];
  readonly children: ComponentChildren;
}

function Field({ label, help, wrong, children }: FieldProps): VNode {
  return (
    <div class={wrong.length > 0 ? "field is-wrong" : "field"}>
      {/* biome-ignore lint/a11y/noLabelWithoutControl: the control is what the caller puts inside */}
      <label>
        {label}
        {help && <small>{help}</small>}
        {children}
      </label>
      <div aria-live="polite">
        {wrong.map((problem) => (
          <p key={problem.message} class="wrong">
            {sayProblem(problem)}
          </p>
        ))}
      </div>
    </div>
  );
}

function about(problems: readonly Problem[], path: string): readonly Problem[] {
  return problems.filter((problem) => isAt(problem, path));
}

function isAt({ path }: Problem, field: string): boolean {
  return path === field || path.startsWith(`${field}/`);
}

export { SketchScreen as Screen };
