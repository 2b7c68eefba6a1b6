// Every word of the trade that the page uses, to search and to read.
import type { VNode } from "preact";
import { useState } from "preact/hooks";
import { search } from "../state/glossary.ts";
import { GLOSSARY } from "../text/en-glossary.ts";
import { Heading } from "../ui/heading.tsx";
import { SearchField } from "../ui/search-field.tsx";
import "../style/term.css";

function Glossary(): VNode {
  const [typed, setTyped] = useState("");
  const found = search(typed);
  return (
    <section class="column glossary">
      <Heading of="glossary">{GLOSSARY.title}</Heading>
      <p class="help">{GLOSSARY.lead}</p>
      <SearchField
        label={GLOSSARY.search}
        typed={typed}
        onType={setTyped}
        says={found.length > 0 ? GLOSSARY.found(found.length) : GLOSSARY.none(typed.trim())}
      />
      {found.length > 0 && (
        <dl class="words-of">
          {found.map(({ id, word, say }) => (
            <div key={id}>
              <dt>{word}</dt>
              <dd>{say}</dd>
            </div>
          ))}
        </dl>
      )}
    </section>
  );
}

export { Glossary as Screen };
