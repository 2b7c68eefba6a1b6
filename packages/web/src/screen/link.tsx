// A case that came as a link: opened only when the user says so, as a case of its own on this device unless the very
// same is here already.
import type { VNode } from "preact";
import { useEffect, useState } from "preact/hooks";
import { readLink } from "../hand-over/link.ts";
import { sameCase } from "../hand-over/same-case.ts";
import { openCase, takeCase } from "../state/case.ts";
import type { FileReading } from "../state/file.ts";
import { lookAtShelf, open, shelf } from "../state/keep.ts";
import { goTo } from "../state/route.ts";
import type { CaseDoc } from "../state/store.ts";
import { clearView } from "../state/view.ts";
import { sayCase } from "../text/answer.ts";
import { LAZY, START } from "../text/en.ts";
import { LINKED } from "../text/en-shelf.ts";
import { Heading } from "../ui/heading.tsx";
import { Invented } from "../ui/invented.tsx";
import { Finish } from "../ui/option.tsx";
import { Problems } from "../ui/problems.tsx";

function Link(): VNode {
  const [reading, setReading] = useState<FileReading | undefined>();
  useEffect(() => {
    void lookAtShelf()
      .then(() => readLink(location.hash))
      .then(setReading);
  }, []);
  const here = reading && "doc" in reading ? sameCase(reading.doc, shelf.value) : undefined;
  return (
    <section class="column">
      <Heading of="link">{LINKED.title}</Heading>
      {!reading && <p class="help">{LAZY.coming}</p>}
      {reading && "problems" in reading && <Problems title={LINKED.broken} of={reading.problems} />}
      {reading && "doc" in reading && (
        <>
          <p>
            {sayCase(reading.doc)}, {START.answers(reading.doc.findings.length)}
          </p>
          <Invented of={reading.doc.engine} />
          <p class="help">{here ? LINKED.isHere : LINKED.help}</p>
          <Finish
            onClick={() => {
              clearView();
              take(reading.doc);
              goTo("ranking");
            }}
          >
            {LINKED.open}
          </Finish>
        </>
      )}
    </section>
  );
}

/** By what is here at the tap: another tab may have changed it meanwhile. */
function take(doc: CaseDoc): void {
  const here = sameCase(doc, shelf.value);
  if (!here) takeCase(doc);
  else if (here.id !== openCase.value?.id) open(here);
}

export { Link as Screen };
