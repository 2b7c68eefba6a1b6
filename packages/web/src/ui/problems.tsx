// What is wrong with an input, so that it can be put right.
import type { Problem } from "@half-order/core";
import type { VNode } from "preact";
import { PROBLEM } from "../text/en-problem.ts";

interface ProblemsProps {
  readonly title: string;
  /** What to do, in plain words; what is wrong in detail then stands small below it. */
  readonly todo?: string;
  readonly of: readonly Problem[];
}

export function Problems({ title, todo, of }: ProblemsProps): VNode {
  return (
    <section class="caution" role="alert">
      <strong>{title}</strong>
      {todo && (
        <>
          <p>{todo}</p>
          <small>{PROBLEM.found}</small>
        </>
      )}
      <ul>
        {of.map(({ code, path, message, hint }) => (
          <li key={`${code} ${path}`}>
            {todo ? (
              <small>
                {message} {hint} {path && PROBLEM.at(path)}
              </small>
            ) : (
              <>
                {message} {hint} {path && <small>{PROBLEM.at(path)}</small>}
              </>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
