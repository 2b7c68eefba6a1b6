// Stands in for the way home where the page is built: only the drive screen tells it, so it comes with the whole
// tables of the thread.
export { LIMP_HOME, LIMP_HOME_OLDER } from "./knowledge.ts";
