// Is a field of a form still wrong? Then nothing goes on before it is put right.

/** Takes the hand to the first wrong field in a part of the page; false when there is none. */
export function goToWrong(part: Element | null | undefined): boolean {
  const field = part?.querySelector<HTMLElement>("[aria-invalid=true]");
  field?.focus();
  return Boolean(field);
}
