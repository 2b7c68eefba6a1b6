// Is the short list of the page the ranking of the library, part by part?
import { profileById, rank } from "@half-order/core";
import { describe, expect, it } from "vitest";
import { partGroups } from "../../packages/web/src/state/group.ts";
import { sayGroup, sayPart } from "../../packages/web/src/text/answer.ts";

function rankingOf(id: string, codes: readonly string[]) {
  const profile = profileById(id);
  if (!profile) throw new Error(`no profile ${id}`);
  return rank(profile, codes.length > 0 ? [{ finding: "codes", answer: codes }] : [], {
    tolerance: 1e-3,
  });
}

describe("the parts of a ranking", () => {
  const ranking = rankingOf("generic.i4.1342.rail", ["P0301", "P0304"]);
  const groups = partGroups(ranking);

  it("stand likeliest first, with the library's own chance of the part", () => {
    const [first] = groups;
    const [likeliest] = ranking.components;
    expect(first?.key).toBe(likeliest?.component);
    expect(first?.probability).toBe(likeliest?.probability);
    const chances = groups.map(({ probability }) => probability);
    expect(chances).toEqual([...chances].sort((a, b) => b - a));
  });

  it("hold each fault worth telling once, under its own part", () => {
    const keys = groups.flatMap(({ faults }) => faults.map((f) => `${f.fault}@${f.place}`));
    expect(new Set(keys).size).toBe(keys.length);
    const worth = ranking.ranking.filter(({ probability }) => probability > 0.002);
    expect(keys).toEqual(expect.arrayContaining(worth.map((f) => `${f.fault}@${f.place}`)));
  });

  it("are one row where only the cylinder tells them apart", () => {
    const nothing = partGroups(rankingOf("generic.i4.1342.coil-per-plug", []));
    const coil = nothing.find(({ part }) => part === "coil");
    expect(coil?.places).toHaveLength(4);
    expect(coil && sayPart(coil)).toBe("Coil of 1, 2, 3 or 4");
  });

  it("are told apart where one is all of a kind and the other one of them", () => {
    const nothing = partGroups(rankingOf("generic.i4.1342.rail", []));
    const plugs = nothing.filter(({ part }) => part === "spark plug");
    expect(plugs.map(sayPart).sort()).toEqual([
      "Every spark plug alike",
      "Spark plug of 1, 2, 3 or 4",
    ]);
    const names = nothing.map(sayGroup);
    expect(new Set(names).size).toBe(names.length);
  });

  it("are named by their fault where they have only one", () => {
    for (const group of groups) {
      const [only, other] = group.faults;
      expect(sayGroup(group)).toBe(other ? sayPart(group) : only?.name);
    }
  });
});
