// A case that came as a link: opened only when the user says so, as a case of its own on this device unless the very
// same is here already.
import type { VNode } from "preact";
import { useEffect, useState } from "preact/hooks";
import { readLink } from "../hand-over/link.ts";
import { sameCase } from "../hand-over/same-case.ts";
import { takeOnce } from "../hand-over/take-once.ts";
import type { FileReading } from "../state/file.ts";
import { lookAtShelf, shelf } from "../state/keep.ts";
import { sayCase } from "../text/answer.ts";
import { LAZY } from "../text/en.ts";
import { KEPT } from "../text/en-kept.ts";
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
            {sayCase(reading.doc)}, {KEPT.answers(reading.doc.findings.length)}
          </p>
          <Invented of={reading.doc.engine} />
          <p class="help">{here ? LINKED.isHere : LINKED.help}</p>
          <Finish
            onClick={() => {
              void takeOnce(reading.doc);
            }}
          >
            {LINKED.open}
          </Finish>
        </>
      )}
    </section>
  );
}

export { Link as Screen };
