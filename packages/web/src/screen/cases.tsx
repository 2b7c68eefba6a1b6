// All cases of this device, of one engine or of several: open, rename, copy, save, delete.
import type { VNode } from "preact";
import { useEffect, useState } from "preact/hooks";
import { nameCase, named, newCase, openCase } from "../state/case.ts";
import { saveAsFile } from "../state/file.ts";
import { forget, lookAtShelf, open, reshelve, shelf, shelve } from "../state/keep.ts";
import { at, goTo } from "../state/route.ts";
import type { KeptCase } from "../state/store.ts";
import { clearView } from "../state/view.ts";
import { sayCase, sayKept, sayProfile } from "../text/answer.ts";
import { CASES } from "../text/en-shelf.ts";
import { FileWay } from "../ui/file-way.tsx";
import { Heading } from "../ui/heading.tsx";

export function Cases(): VNode {
  const [removed, setRemoved] = useState<KeptCase | undefined>();
  useEffect(() => {
    void lookAtShelf();
  }, []);
  return (
    <section class="column">
      <Heading of="cases">{CASES.title}</Heading>
      <p class="help">{shelf.value.length > 0 ? CASES.help : CASES.none}</p>
      <div role="status">
        {removed && (
          <p class="trouble is-quiet">
            {CASES.removed(sayCase(removed.doc))}{" "}
            <button
              type="button"
              class="quiet"
              onClick={() => {
                void shelve(removed).then(() => setRemoved(undefined));
              }}
            >
              {CASES.putBack}
            </button>
          </p>
        )}
      </div>
      <ul class="cases">
        {shelf.value.map((kept) => (
          <Kept
            key={kept.id}
            kept={kept}
            onRemove={() => {
              void forget(kept.id).then(() => setRemoved(kept));
            }}
          />
        ))}
      </ul>
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

interface KeptProps {
  readonly kept: KeptCase;
  readonly onRemove: () => void;
}

function Kept({ kept, onRemove }: KeptProps): VNode {
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
