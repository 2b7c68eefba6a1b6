// Every finding by topic, to add or change at any time.
import type { VNode } from "preact";
import { askedOf } from "../state/asked.ts";
import { answersOf, openCase, profile } from "../state/case.ts";
import { isDesk } from "../state/view.ts";
import { askFrom } from "../state/way.ts";
import { ADD } from "../text/en.ts";
import { TOPICS } from "../text/en-answers.ts";
import { Heading } from "../ui/heading.tsx";
// The answers that it leads to hold figures.
import "../state/unit.ts";

/** Topics that stand open: whoever comes back from a question finds them so. */
const opened = new Set<string>();
let openedIn: string | undefined;

function Add(): VNode {
  const caseId = openCase.value?.id;
  if (caseId !== openedIn) opened.clear();
  openedIn = caseId;
  const asked = askedOf(profile.value);
  const topics = [...new Set(asked.map(({ topic }) => topic))];
  return (
    <section class="column">
      <Heading of="add" level={isDesk.value ? 2 : 1}>
        {ADD.title}
      </Heading>
      <p class="help">{TOPICS.help}</p>
      {topics.map((topic) => (
        <details
          key={topic}
          class="topic"
          open={opened.has(topic)}
          onToggle={({ currentTarget }) => opened[currentTarget.open ? "add" : "delete"](topic)}
        >
          <summary>{TOPICS.topics[topic] ?? topic}</summary>
          <ul class="links">
            {asked
              .filter((row) => row.topic === topic)
              .map(({ id, ask }) => (
                <li key={id}>
                  <a href={askFrom("add", id)}>
                    {ask}
                    {answersOf(id).length > 0 && <small>✓ {TOPICS.given}</small>}
                  </a>
                </li>
              ))}
          </ul>
        </details>
      ))}
    </section>
  );
}

export { Add as Screen };
