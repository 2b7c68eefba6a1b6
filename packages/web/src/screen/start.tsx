// The first screen: safe first, then the number of cylinders, or another way in.
import { allProfiles, type EngineProfile, resolveEngine } from "@half-order/core";
import type { VNode } from "preact";
import { useEffect, useState } from "preact/hooks";
import { Dial } from "../diagram/dial.tsx";
import { resumeCase, takeCase } from "../state/case.ts";
import { type FileReading, readCaseFile } from "../state/file.ts";
import { forget, lookAtShelf, shelf } from "../state/keep.ts";
import { at, goTo } from "../state/route.ts";
import type { KeptCase } from "../state/store.ts";
import { clearView } from "../state/view.ts";
import { sayProfile } from "../text/answer.ts";
import { FILE, START } from "../text/en.ts";
import { SafeFirst } from "../ui/caution.tsx";
import { Heading } from "../ui/heading.tsx";
import { Problems } from "../ui/problems.tsx";

const counts = [...new Set(allProfiles().map(({ cylinders }) => cylinders))].sort((a, b) => a - b);
const example = allProfiles().find(({ invented }) => invented);

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
        {example && <Hero profile={example} />}
      </div>
      <div class="start-ways">
        <h2 class="title">{START.ask}</h2>
        <div class="numbers">
          {counts.map((count) => (
            <a key={count} class="number" href={at("pick", String(count))}>
              {count}
            </a>
          ))}
        </div>
        <h2 class="minor">{START.other}</h2>
        <ul class="links">
          <Way to="demo" say={START.demo} more={START.demoMore} />
          <Way to="sketch" say={START.sketch} more={START.sketchMore} />
          <li>
            <FileWay />
          </li>
        </ul>
        <Shelf />
      </div>
    </div>
  );
}

function Hero({ profile }: { profile: EngineProfile }): VNode {
  return (
    <figure class="hero">
      <Dial engine={resolveEngine(profile)} />
      <figcaption class="caption">{START.dial}</figcaption>
    </figure>
  );
}

function Way({ to, say, more }: { to: string; say: string; more: string }): VNode {
  return (
    <li>
      <a href={at(to)}>
        {say}
        <small>{more}</small>
      </a>
    </li>
  );
}

/** Opens a case file from the device. */
function FileWay(): VNode {
  const [reading, setReading] = useState<FileReading | undefined>();
  const open = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    const read = await readCaseFile(file);
    setReading(read);
    if (!("doc" in read)) return;
    clearView();
    takeCase(read.doc);
    goTo("ranking");
  };
  return (
    <>
      <label class="file">
        <span>
          {START.file}
          <small>{START.fileMore}</small>
        </span>
        <input
          type="file"
          class="vh"
          accept=".json,application/json"
          onChange={(event) => {
            const input = event.currentTarget;
            // The same file may be chosen again after it was mended.
            void open(input.files?.[0]).finally(() => {
              input.value = "";
            });
          }}
        />
      </label>
      {reading && "problems" in reading && <Problems title={FILE.title} of={reading.problems} />}
    </>
  );
}

function Shelf(): VNode | null {
  if (shelf.value.length === 0) return null;
  return (
    <>
      <h2 class="minor">{START.kept}</h2>
      <ul class="links">
        {shelf.value.map((kept) => (
          <Kept key={kept.id} kept={kept} />
        ))}
      </ul>
    </>
  );
}

function Kept({ kept }: { kept: KeptCase }): VNode {
  const [isAsked, setAsked] = useState(false);
  return (
    <li class="kept-case">
      <button
        type="button"
        class="resume"
        onClick={() => {
          clearView();
          resumeCase(kept);
          goTo("ranking");
        }}
      >
        {sayProfile(kept.doc.engine)}
        <small>
          {START.answers(kept.doc.findings.length)}, {new Date(kept.changed).toLocaleString()}
        </small>
      </button>
      <button
        type="button"
        class="quiet"
        onClick={() => {
          if (isAsked) void forget(kept.id);
          else setAsked(true);
        }}
      >
        {isAsked ? START.confirmForget : START.forget}
        <span class="vh"> {sayProfile(kept.doc.engine)}</span>
      </button>
    </li>
  );
}
