// What is wrong with an input, so that it can be put right.
import type { Problem } from "@half-order/core";
import type { VNode } from "preact";
import { FILE } from "../text/en.ts";

export function Problems({ title, of }: { title: string; of: readonly Problem[] }): VNode {
  return (
    <section class="caution" role="alert">
      <strong>{title}</strong>
      <ul>
        {of.map(({ code, path, message, hint }) => (
          <li key={`${code} ${path}`}>
            {message} {hint} {path && <small>{FILE.at(path)}</small>}
          </li>
        ))}
      </ul>
    </section>
  );
}
