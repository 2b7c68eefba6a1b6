// What is wrong with something a person or a file gave us, said so that they can put it right.

/** One thing wrong with an input. */
export interface Problem {
  /** Stable word for programs, e.g. `order-repeats`. */
  readonly code: string;
  /** JSON Pointer (RFC 6901) to the bad field, e.g. `/firingOrder/3`; empty for the whole input. */
  readonly path: string;
  /** What was got and why it cannot be used. */
  readonly message: string;
  /** What to write instead. */
  readonly hint: string;
}

/** Thrown at the library's door when an input cannot be used; carries every problem found. */
export class InputError extends Error {
  readonly problems: readonly Problem[];

  constructor(problems: readonly Problem[]) {
    super(problems.map((p) => `${p.path || "(input)"}: ${p.message} ${p.hint}`).join("\n"));
    this.name = "InputError";
    this.problems = problems;
  }
}

/** Builds a JSON Pointer from its parts, escaping `~` and `/` (RFC 6901, section 3). */
export function pointer(...parts: readonly (string | number)[]): string {
  return parts
    .map((part) => `/${String(part).replaceAll("~", "~0").replaceAll("/", "~1")}`)
    .join("");
}
