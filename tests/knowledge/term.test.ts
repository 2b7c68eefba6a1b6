// Is every word of the trade explained once, in sentences that a beginner reads in one go?
import { TERMS } from "../../packages/core/src/index.ts";
import { sentences, words } from "../helper/knowledge-text.ts";
import { holds } from "../helper/rule.ts";

const formsOf = ({ word, also = [] }: (typeof TERMS)[number]): readonly string[] =>
  [word, ...also].map((form) => form.toLowerCase());

holds({
  name: "no form of a word belongs to two terms",
  why: "A tap on it could show only one of them.",
  *check() {
    for (const term of TERMS) {
      const others = TERMS.filter((other) => other !== term).flatMap(formsOf);
      const twice = formsOf(term).filter((form) => others.includes(form));
      yield { at: term.id, breach: twice.length > 0 ? twice.join(", ") : undefined };
    }
  },
  exceptions: {},
});

holds({
  name: "the id of a term is its own",
  why: "Screens and tests find it by its id.",
  *check() {
    for (const { id } of TERMS) {
      const count = TERMS.filter((other) => other.id === id).length;
      yield { at: id, breach: count > 1 ? `${count} times` : undefined };
    }
  },
  exceptions: {},
});

holds({
  name: "a term is explained in one or two sentences, none longer than 30 words",
  why: "It is read in the middle of another sentence.",
  *check() {
    for (const { id, say } of TERMS) {
      const all = sentences(say);
      const longest = Math.max(...all.map((sentence) => words(sentence).length));
      const isSound = all.length >= 1 && all.length <= 2 && longest <= 30;
      const breach = isSound
        ? undefined
        : `${all.length} sentences, the longest of ${longest} words`;
      yield { at: id, breach };
    }
  },
  exceptions: {},
});

holds({
  name: "no term holds a figure",
  why: "Figures need grounds, and belong to the tables or to the manual.",
  *check() {
    for (const { id, say } of TERMS) {
      yield { at: id, breach: /\d/.test(say) ? say : undefined };
    }
  },
  exceptions: {},
});
