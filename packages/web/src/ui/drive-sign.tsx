// Which shape stands beside what is said of driving?
import type { DriveLevel } from "@half-order/core";
import type { VNode } from "preact";

/** A shape for each kind of answer, so that colour is not needed: an octagon, a triangle, a disc, a ring. */
export function Sign({ of }: { of?: DriveLevel }): VNode {
  return (
    <svg class="sign" viewBox="-12 -12 24 24" aria-hidden="true">
      {shapeOf(of)}
    </svg>
  );
}

function shapeOf(level: DriveLevel | undefined): VNode {
  switch (level) {
    case "stop-now":
    case "do-not-drive":
      return (
        <>
          <path class="field" d="M-4.4 -10.6H4.4L10.6 -4.4V4.4L4.4 10.6H-4.4L-10.6 4.4V-4.4Z" />
          <path class="stroke" d="M-6 0H6" />
        </>
      );
    case "to-safety-only":
      return (
        <>
          <path class="field" d="M0 -10.5L11 9.5H-11Z" />
          <path class="stroke" d="M0 -3.5V3M0 5.5V7" />
        </>
      );
    case "drive-gently":
      return <path class="outline" d="M0 -9.5L10 8.5H-10Z" />;
    default:
      return <circle class="outline" r="9" />;
  }
}
