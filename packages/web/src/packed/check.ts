// Stands in for the table of checks where the page is built; they come with the findings that come later, and
// their steps with `fetchSteps`.
export { CHECKS } from "./asked.ts";
