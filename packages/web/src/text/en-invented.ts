// The words that stand by whatever is said of an engine that does not exist.

export const INVENTED = "An invented engine: never work on a real one with its figures or cases.";
