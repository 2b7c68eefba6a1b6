// The words round the glossary; what its words mean comes from the knowledge.

export const GLOSSARY = {
  title: "Words of the trade",
  lead: "Each in a sentence or two, for somebody who hears it for the first time.",
  search: "Search",
  found: (n: number): string => (n === 1 ? "1 word" : `${n} words`),
  none: (typed: string): string => `No word here holds “${typed}”. Try a part of it.`,
  /** After the word, for who does not see that it can be tapped. */
  explains: "what it means",
};
