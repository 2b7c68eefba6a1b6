// Stands in for the rules of driving where the page is built: they come with the first tables of the thread,
// and the rest of their words with the whole ones.
export { DRIVE_RULES } from "./knowledge.ts";
