// Are a workshop's own numbers refused that leave nothing to rank, or that would drive a terminal?
import { FAULTS, profileById, rank } from "@half-order/core";
import { parseOverlay } from "@half-order/core/wire";
import { describe, expect, it } from "vitest";
import { KNOWLEDGE } from "../../packages/core/src/knowledge/knowledge.ts";
import { overlayKnowledge } from "../../packages/core/src/knowledge/overlay.ts";

/** An overlay that takes every share away for which `isOut` holds. */
function without(isOut: (fault: string, kind: string) => boolean) {
  const changes = FAULTS.map(({ id, shares }) => {
    const out = Object.keys(shares).filter((kind) => isOut(id, kind));
    return [id, { shares: Object.fromEntries(out.map((kind) => [kind, 0])) }];
  });
  return { faults: Object.fromEntries(changes) };
}

describe("shares of a workshop's own", () => {
  it("cannot all be 0", () => {
    expect(parseOverlay(without(() => true))).toMatchObject({
      problems: [{ code: "shares-empty", path: "/faults" }],
    });
  });

  it("cannot all be 0 for one kind of ignition, which is named", () => {
    const reading = parseOverlay(without((_, kind) => kind === "distributor"));
    expect(reading).toMatchObject({ problems: [{ code: "shares-empty" }] });
    expect(JSON.stringify(reading)).toContain("ignition is distributor.");
  });

  it("may leave a single fault, which then leads", () => {
    const reading = parseOverlay(without((id, kind) => kind === "rail" && id !== "coil.weak"));
    if ("problems" in reading) throw new Error(JSON.stringify(reading.problems));
    const knowledge = overlayKnowledge(KNOWLEDGE, reading.overlay);
    const engine = profileById("generic.i4.1342.rail");
    if (!engine) throw new Error("generic.i4.1342.rail is gone");
    expect(rank(engine, [], { knowledge }).ranking[0]?.fault).toBe("coil.weak");
  });
});

it("a title stands on one line", () => {
  for (const title of ["a\u001b[2J", "a\nb", "a\u0000"]) {
    expect(parseOverlay({ title })).toMatchObject({
      problems: [{ path: "/title", hint: expect.stringMatching(/one line/) }],
    });
  }
  expect(parseOverlay({ title: "Unsere Werkstatt – März" })).toHaveProperty("overlay");
});
