// The words of a case file that cannot be read.

export const CASE_FILE = {
  title: "This file cannot be opened",
  /** Where it is not even like one. */
  noCase: "This file is not a case saved from this page",
  todo: "Choose a case that this page has saved, or save it there once more. Nothing that is here was changed.",
  notText: "The file could not be read.",
  notTextHint: "Choose it again; if that fails, copy it to this device first.",
  noTables: "The page could not load what it needs to check the file.",
  noTablesHint: "Go online, load the page again and open the file once more.",
};
