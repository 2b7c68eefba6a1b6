// All cases of this device, of one engine or of several: open, rename, copy, save, delete, set side by side.
import type { VNode } from "preact";
import { useEffect, useState } from "preact/hooks";
import { type Forgotten, forgetWhole } from "../record/forget.ts";
import { nameCase, named, newCase, openCase } from "../state/case.ts";
import { lookAtShelf, open, reshelve, shelf, shelve } from "../state/keep.ts";
import { takeInOldWork } from "../state/old-work.ts";
import { at, goTo } from "../state/route.ts";
import { saveAsFile } from "../state/save-file.ts";
import type { KeptCase } from "../state/store.ts";
import { clearView } from "../state/view.ts";
import { sayCase, sayProfile } from "../text/answer.ts";
import { CASES } from "../text/en-shelf.ts";
import { sayKept } from "../text/kept.ts";
import { FileWay } from "../ui/file-way.tsx";
import { Heading } from "../ui/heading.tsx";

function Cases(): VNode {
  const [removed, setRemoved] = useState<Forgotten | undefined>();
  const [arePhotosLost, setPhotosLost] = useState(false);
  const [picked, setPicked] = useState<readonly string[]>([]);
  useEffect(() => {
    void takeInOldWork().then(lookAtShelf);
  }, []);
  const remove = async (kept: KeptCase): Promise<void> => {
    setRemoved(await forgetWhole(kept));
    setPicked(picked.filter((id) => id !== kept.id));
    setPhotosLost(false);
  };
  const putBack = async (of: Forgotten): Promise<void> => {
    setPhotosLost(!(await of.putBack()));
    setRemoved(undefined);
  };
  return (
    <section class="column">
      <Heading of="cases">{CASES.title}</Heading>
      <p class="help">{shelf.value.length > 0 ? CASES.help : CASES.none}</p>
      <div role="status">
        {removed && (
          <p class="trouble is-quiet">
            {CASES.removed(sayCase(removed.kept.doc))} {removed.arePhotosLeft && CASES.photosLeft}{" "}
            <button type="button" class="quiet" onClick={() => void putBack(removed)}>
              {CASES.putBack}
            </button>
          </p>
        )}
        {arePhotosLost && <p class="wrong">{CASES.photosLost}</p>}
      </div>
      <ul class="cases">
        {shelf.value.map((kept) => (
          <Kept
            key={kept.id}
            kept={kept}
            isPicked={picked.includes(kept.id)}
            onPick={() => setPicked(pickedWith(picked, kept.id))}
            onRemove={() => void remove(kept)}
          />
        ))}
      </ul>
      {shelf.value.length > 1 && <Pair of={picked} />}
      <ul class="links">
        <li>
          <FileWay />
        </li>
        <li>
          <a href={at()}>{CASES.anew}</a>
        </li>
      </ul>
    </section>
  );
}

/** Two at most: a third takes the place of the first. */
function pickedWith(picked: readonly string[], id: string): readonly string[] {
  return picked.includes(id) ? picked.filter((other) => other !== id) : [...picked, id].slice(-2);
}

/** The way to the two that are picked. */
function Pair({ of }: { of: readonly string[] }): VNode {
  return (
    <div role="status">
      {of.length < 2 ? (
        <p class="help">{CASES.pickTwo(of.length)}</p>
      ) : (
        <a class="option is-finish" href={at("compare", ...of)}>
          {CASES.sideBySide}
        </a>
      )}
    </div>
  );
}

interface KeptProps {
  readonly kept: KeptCase;
  readonly isPicked: boolean;
  readonly onPick: () => void;
  readonly onRemove: () => void;
}

function Kept({ kept, isPicked, onPick, onRemove }: KeptProps): VNode {
  const [isNaming, setNaming] = useState(false);
  const name = sayCase(kept.doc);
  const isOpen = openCase.value?.id === kept.id;
  const acts: readonly (readonly [string, () => void])[] = [
    [CASES.rename, () => setNaming(!isNaming)],
    [CASES.copy, () => void shelve(newCase(named(kept.doc, CASES.copyName(name))))],
    [CASES.save, () => saveAsFile(kept)],
    [CASES.remove, onRemove],
  ];
  return (
    <li>
      <button
        type="button"
        class="resume"
        onClick={() => {
          clearView();
          if (!isOpen) open(kept);
          goTo("ranking");
        }}
      >
        {name}
        <small>
          {kept.doc.title === undefined ? "" : `${sayProfile(kept.doc.engine)}, `}
          {sayKept(kept)}
          {isOpen ? `, ${CASES.isOpen}` : ""}
        </small>
      </button>
      <p class="acts">
        {acts.map(([say, act]) => (
          <button key={say} type="button" class="quiet" onClick={act}>
            {say}
            <span class="vh"> {name}</span>
          </button>
        ))}
        {shelf.value.length > 1 && (
          <button type="button" class="quiet" aria-pressed={isPicked} onClick={onPick}>
            {isPicked ? CASES.picked : CASES.pick}
            <span class="vh"> {name}</span>
          </button>
        )}
      </p>
      {isNaming && <Naming kept={kept} onDone={() => setNaming(false)} />}
    </li>
  );
}

function Naming({ kept, onDone }: { kept: KeptCase; onDone: () => void }): VNode {
  const [title, setTitle] = useState(kept.doc.title ?? "");
  const use = async (event: Event): Promise<void> => {
    event.preventDefault();
    if (openCase.value?.id === kept.id) {
      nameCase(title);
      await lookAtShelf();
    } else await reshelve(kept, { ...kept, changed: Date.now(), doc: named(kept.doc, title) });
    onDone();
  };
  return (
    <form class="figure" onSubmit={(event) => void use(event)}>
      <label>
        {CASES.name}
        <input
          type="text"
          maxLength={200}
          value={title}
          onInput={(event) => setTitle(event.currentTarget.value)}
        />
      </label>
      <button type="submit" class="small">
        {CASES.use}
      </button>
    </form>
  );
}

export { Cases as Screen };
