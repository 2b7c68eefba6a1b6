// Stands in for the table of findings where the page is built: fetched as data, not parsed as script.
export { FINDINGS } from "./asked.ts";
