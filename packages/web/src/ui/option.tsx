// Answer buttons: tall enough for a thumb, with the answer given before marked by weight and a dot.
import type { ComponentChildren, VNode } from "preact";

interface OptionProps {
  readonly say: string;
  readonly more?: string | undefined;
  /** Left out for buttons that are no answer of their own. */
  readonly isGiven?: boolean;
  /** For answers of which several may hold: shown as a box to tick. */
  readonly isSeveral?: boolean;
  readonly onClick: () => void;
}

export function Option({ say, more, isGiven, isSeveral, onClick }: OptionProps): VNode {
  const kind = isSeveral ? "option is-several" : "option";
  return (
    <button
      type="button"
      class={kind}
      {...(isGiven === undefined ? {} : { "aria-pressed": isGiven })}
      onClick={onClick}
    >
      <span class="tick" aria-hidden="true" />
      <span class="words">
        {say}
        {more && <small>{more}</small>}
      </span>
    </button>
  );
}

interface PlainProps {
  readonly children: ComponentChildren;
  readonly more?: string;
  readonly onClick: () => void;
}

/** "Can't tell": always there, never louder than an answer. */
export function Dashed({ children, more, onClick }: PlainProps): VNode {
  return (
    <button type="button" class="option is-dashed" onClick={onClick}>
      <span class="words">
        {children}
        {more && <small>{more}</small>}
      </span>
    </button>
  );
}

/** Ends an answer that is put together of several taps. */
export function Finish({ children, onClick }: PlainProps): VNode {
  return (
    <button type="button" class="option is-finish" onClick={onClick}>
      {children}
    </button>
  );
}
