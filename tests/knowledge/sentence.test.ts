// Can a beginner read it in one go, and does it name nobody's brand?
import { prose, sentences, words } from "../helper/knowledge-text.ts";
import { holds } from "../helper/rule.ts";

const LONGEST = 30;

holds({
  name: "no sentence is longer than 30 words",
  why: "It is read at the roadside, on a small screen, perhaps in the rain.",
  *check() {
    for (const { at, text } of prose()) {
      const longest = Math.max(0, ...sentences(text).map((sentence) => words(sentence).length));
      yield { at, breach: longest <= LONGEST ? undefined : `has one of ${longest} words` };
    }
  },
  exceptions: {},
});

/** Capitals inside a sentence that are no name. */
const NO_NAME = new Set(["V"]);

holds({
  name: "no proper name stands in the knowledge",
  why: "It speaks of kinds of parts, never of a make: names of makers belong to their owners.",
  *check() {
    for (const { at, text } of prose()) {
      const found = sentences(text)
        .flatMap((sentence) => words(sentence).slice(1))
        .map((word) => word.replace(/^[^\p{L}\p{N}]+|[^\p{L}\p{N}]+$/gu, ""))
        .filter(
          (word) => /^\p{Lu}/u.test(word) && !NO_NAME.has(word) && !/^[PUBC]0|^M\d/.test(word),
        );
      yield { at, breach: found.length > 0 ? found.join(", ") : undefined };
    }
  },
  exceptions: {},
});
