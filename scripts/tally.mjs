// The last line of a test run, said in one place.

/** `N passed, N failed`, and `, N skipped` after it when there are any. */
export function tallyLine({ passed, failed, skipped }) {
  const line = `${passed} passed, ${failed} failed`;
  return skipped > 0 ? `${line}, ${skipped} skipped` : line;
}
