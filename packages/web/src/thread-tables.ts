// The thread's tables are whole from the start. Where the page is built, `packed/thread-tables.ts` stands in for
// this file and fetches what a first ranking can do without.

/** Settles once every table is whole. */
export const fillKnowledge = async (): Promise<void> => undefined;
