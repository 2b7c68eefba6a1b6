// What it was, and both ways beside one another: each check and repair with its minutes, how it ended, and where they
// part.
import { resolveEngine } from "@half-order/core";
import type {
  Comparison,
  HiddenTruth,
  Parting,
  PartingStep,
  Path,
  PathRepair,
  PathStep,
} from "@half-order/core/instrument";
import type { VNode } from "preact";
import { sayBroken } from "../lesson/words.ts";
import { faultWords } from "../state/prose.ts";
import { at } from "../state/route.ts";
import { LESSON } from "../text/en-lesson.ts";
import { sayMinutes } from "../text/en-mend.ts";
import { PRACTICE, sayCost, sayStep } from "../text/en-practice.ts";
import { Bar, chanceText } from "../ui/chance.tsx";
import { Words } from "../ui/term.tsx";
import { engineId, engineProfile, hideAnother } from "./practice.ts";
import { TakingFocus } from "./taking-focus.tsx";
import { Shown } from "./told.tsx";

export function BothWays({ of }: { of: Comparison }): VNode {
  const { belief, learner, library, parting } = of;
  return (
    <>
      <Was of={of} />
      <section class="practice-part">
        <h2>{PRACTICE.ways}</h2>
        <p class="help">{PRACTICE.waysHelp}</p>
        <div class="practice-ways">
          <Way name={PRACTICE.learner} of={learner} before={belief} />
          <Way name={PRACTICE.library} of={library} before={belief} />
        </div>
      </section>
      <Parted of={parting} />
    </>
  );
}

function Was({ of: { truth, mends, learner } }: { of: Comparison }): VNode {
  const about = faultWords(truth.fault)?.about;
  const chosen = learner.steps.at(-1);
  return (
    <section class="practice-part">
      <TakingFocus level={2}>{PRACTICE.was}</TakingFocus>
      <h3 class="practice-truth">{truth.name}</h3>
      <p>{sayMends(mends)}</p>
      {chosen?.kind === "repair" && <p>{sayReach(chosen)}</p>}
      {about && (
        <p>
          <Words text={about} />
        </p>
      )}
      <Form of={truth} />
      <p>
        <a class="act-link" href={at("lesson", engineId.value, truth.fault, truth.place)}>
          {PRACTICE.watch}
        </a>
      </p>
      <p class="help">{PRACTICE.watchHelp}</p>
    </section>
  );
}

/** In which size and form it was hidden, in the words of the lesson. */
function Form({ of: { figures } }: { of: HiddenTruth }): VNode | null {
  const profile = engineProfile.value;
  if (!profile || figures.length === 0) return null;
  const engine = resolveEngine(profile);
  return (
    <>
      <h3>{LESSON.what}</h3>
      <ul>
        {figures.map((each) => (
          <li key={each.figure + each.cylinders.join()}>{sayBroken(engine, each)}</li>
        ))}
      </ul>
    </>
  );
}

function sayMends(mends: readonly PathRepair[]): string {
  if (mends.length === 0) return PRACTICE.mendsNone;
  const each = mends.map(({ name, cures }) => PRACTICE.curer(name, chanceText(cures)));
  return PRACTICE.mends(each.join("; "));
}

function sayReach({ name, cures }: PathRepair): string {
  return cures > 0 ? PRACTICE.reaches(name, chanceText(cures)) : PRACTICE.misses(name);
}

function Way({ name, of, before }: { name: string; of: Path; before: number }): VNode {
  const { steps, checkMinutes, minutes, end } = of;
  return (
    <section class="practice-way">
      <h3>{name}</h3>
      <ol class="practice-steps">
        <li>
          <p>{PRACTICE.before}</p>
          <Believed of={before} />
        </li>
        {steps.map((step, i) => (
          // The same check may be made twice.
          <Step key={i} of={step} />
        ))}
        <li>
          <p>
            <strong>{PRACTICE.end[end]}</strong>
          </p>
        </li>
      </ol>
      <dl class="practice-sums">
        <div>
          <dt>{PRACTICE.checksTook}</dt>
          <dd>{sayCost(checkMinutes)}</dd>
        </div>
        <div>
          <dt>{PRACTICE.allTook[end]}</dt>
          <dd>{sayCost(minutes)}</dd>
        </div>
      </dl>
    </section>
  );
}

function Step({ of }: { of: PathStep }): VNode {
  return (
    <li>
      <Done of={of} />
      {of.belief !== undefined && <Believed of={of.belief} />}
    </li>
  );
}

function Done({ of }: { of: PathStep }): VNode {
  switch (of.kind) {
    case "peek":
      return <p>{PRACTICE.peeked}</p>;
    case "repair":
      return <Repair of={of} />;
    case "check":
      return (
        <>
          <p>
            {sayStep(of)}
            <small>{sayCost(of.minutes)}</small>
          </p>
          <Shown of={of.shows} />
        </>
      );
  }
}

/** How probable the true fault was held. */
function Believed({ of }: { of: number }): VNode {
  return (
    <div class="practice-believed">
      <p>{PRACTICE.held(chanceText(of))}</p>
      <Bar of={of} isLeader={false} />
    </div>
  );
}

function Repair({ of: { name, minutes, cures } }: { of: PathRepair }): VNode {
  return (
    <p>
      {name}
      <small>
        {sayCost(minutes)}, {cures > 0 ? PRACTICE.cured(chanceText(cures)) : PRACTICE.notCured}
      </small>
    </p>
  );
}

function Parted({ of }: { of: Parting | undefined }): VNode {
  return (
    <section class="practice-part">
      <h2>{PRACTICE.part}</h2>
      {of ? (
        <>
          <p>{PRACTICE.partAt(of.together)}</p>
          <p>{sayParting(PRACTICE.did.learner, of.learner)}</p>
          <p>{sayParting(PRACTICE.did.library, of.library)}</p>
        </>
      ) : (
        <p>{PRACTICE.never}</p>
      )}
      <p class="help">{PRACTICE.doubt}</p>
      <button type="button" class="option" onClick={() => hideAnother()}>
        {PRACTICE.another}
      </button>
    </section>
  );
}

/** Saved minutes below this are none. */
const WORTH_TELLING = 1;

function sayParting(who: string, step: PartingStep): string {
  if (step.kind === "call") return PRACTICE.handsOver(who, PRACTICE.end[step.why]);
  if (step.kind === "end") return PRACTICE.stops(who);
  if (step.kind === "repair") {
    const { hoped } = step;
    const hope = hoped === undefined ? PRACTICE.notHoped : PRACTICE.hoped(chanceText(hoped));
    return `${PRACTICE.doesMend(who, step.name)} ${hope}`;
  }
  const { worthMinutes } = step;
  const did = PRACTICE.doesCheck(who, sayStep(step));
  if (worthMinutes === undefined) return `${did} ${PRACTICE.notWeighed}`;
  const isWorth = worthMinutes >= WORTH_TELLING;
  return `${did} ${isWorth ? PRACTICE.saves(sayMinutes(worthMinutes)) : PRACTICE.savesNothing}`;
}
