// Stands in for `thread-tables.ts` where the page is built.
export { fillKnowledge } from "./knowledge.ts";
