// Does the foot of a question name a part only when the answers single one out?
import { beforeEach, describe, expect, it, vi } from "vitest";
import "fake-indexeddb/auto";
import {
  beginCase,
  closeAsMended,
  findings,
  giveAnswer,
  profile,
  reopen,
} from "../../packages/web/src/state/case.ts";
import { ranking } from "../../packages/web/src/state/thinking.ts";
import { soFar } from "../../packages/web/src/state/view.ts";
import { sayGroup } from "../../packages/web/src/text/answer.ts";
import { think } from "../../packages/web/src/thread.ts";

// A drawing follows with the next frame; here there is none.
vi.stubGlobal("requestAnimationFrame", (then: () => void) => setTimeout(then));

beforeEach(() => beginCase("demo.tern"));

function weigh(): void {
  if (!profile.value) throw new Error("no engine");
  const question = { profile: profile.value, findings: findings.value, repairs: [] };
  ranking.value = think(question).ranking;
}

describe("what is likely so far", () => {
  it("is nothing before any answer, and nothing while every cylinder is as likely", () => {
    weigh();
    expect(soFar.value).toBeUndefined();
    giveAnswer("lamp", "blinking");
    weigh();
    expect(soFar.value).toBeUndefined();
  });

  it("is the likeliest part, with its own chance, once codes have named cylinders, and nothing once it is mended", () => {
    giveAnswer("codes", ["P0302", "P0305"]);
    weigh();
    expect(soFar.value?.places).toEqual([[2, 5]]);
    // A part that may have failed in several ways: neither one way nor the chance of one stands for it.
    const [likeliest] = ranking.value?.components ?? [];
    expect(soFar.value?.faults.length).toBeGreaterThan(1);
    expect(soFar.value).toMatchObject({ probability: likeliest?.probability });
    expect(soFar.value && sayGroup(soFar.value)).toBe("Coil of 2 and 5");
    closeAsMended();
    expect(soFar.value).toBeUndefined();
    reopen();
    expect(soFar.value?.places).toEqual([[2, 5]]);
  });
});
