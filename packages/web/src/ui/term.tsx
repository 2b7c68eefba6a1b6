// A word of the trade that explains itself on tap, and which words of a sentence are such words.
import { TERMS, type TermRow } from "@half-order/core";
import type { VNode } from "preact";
import { useId, useState } from "preact/hooks";
import { GLOSSARY } from "../text/en-glossary.ts";
import "../style/term.css";

/** A piece of a sentence: plain, or a known word as the sentence writes it. */
export type Piece = string | { readonly words: string; readonly term: TermRow };

const byForm = new Map(
  TERMS.flatMap((term) =>
    [term.word, ...(term.also ?? [])].map((form) => [form.toLowerCase(), term] as const),
  ),
);

/** Longest first, so that "coil rail" is not read as "coil" and "rail". */
const FORMS = [...byForm.keys()].sort((a, b) => b.length - a.length).map(escaped);
const KNOWN = new RegExp(`(?:${FORMS.join("|")})(?![\\p{L}\\p{N}-])`, "giu");
/** Looked at by hand: older browsers know no look-behind. */
const WORD_GOES_ON = /[\p{L}\p{N}-]$/u;

/** Cuts a text at the words that the glossary knows; each word is marked where it comes first. */
export function withTerms(text: string): readonly Piece[] {
  const pieces: Piece[] = [];
  const seen = new Set<string>();
  let from = 0;
  for (const { 0: words, index } of text.matchAll(KNOWN)) {
    const term = byForm.get(words.toLowerCase());
    if (!term || seen.has(term.id) || WORD_GOES_ON.test(text.slice(0, index))) continue;
    seen.add(term.id);
    if (index > from) pieces.push(text.slice(from, index));
    pieces.push({ words, term });
    from = index + words.length;
  }
  if (from < text.length) pieces.push(text.slice(from));
  return pieces;
}

/** A sentence in which every known word explains itself. */
export function Words({ text }: { text: string }): VNode {
  return (
    <>
      {withTerms(text).map((piece) =>
        typeof piece === "string" ? (
          piece
        ) : (
          <Term key={piece.term.id} term={piece.term}>
            {piece.words}
          </Term>
        ),
      )}
    </>
  );
}

interface TermProps {
  readonly term: TermRow;
  /** The word as the sentence writes it; the word itself unless given. */
  readonly children?: string;
}

/** Dotted under the word; a tap shows what it means in place, another or Escape takes it away. */
export function Term({ term, children = term.word }: TermProps): VNode {
  const [isOpen, setOpen] = useState(false);
  const id = useId();
  const close = (event: KeyboardEvent): void => {
    if (event.key !== "Escape" || !isOpen) return;
    event.stopPropagation();
    setOpen(false);
  };
  return (
    <span class="term">
      <button
        type="button"
        class="term-word"
        aria-expanded={isOpen}
        aria-controls={id}
        onClick={() => setOpen(!isOpen)}
        onKeyDown={close}
      >
        {children}
        <span class="vh">, {GLOSSARY.explains}</span>
      </button>
      <span id={id} class="term-meaning" role="note" hidden={!isOpen}>
        {isOpen && term.say}
      </span>
    </span>
  );
}

function escaped(form: string): string {
  return form.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
}
