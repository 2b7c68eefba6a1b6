// Are contact breaker and carburettor taken where they can be, and refused elsewhere?
import { describe, expect, it } from "vitest";
import {
  checkProfile,
  type EngineProfile,
  hasDiagnosticPort,
  IGNITION_KINDS,
  profileById,
  rank,
} from "../../../packages/core/src/index.ts";
import { parseCase, profileSchema } from "../../../packages/core/src/wire/index.ts";

const OLD: EngineProfile = {
  cylinders: 4,
  firingOrder: [1, 3, 4, 2],
  ignition: "distributor",
  switching: "contact-breaker",
  fuelling: "carburettor",
};

const pathsOf = (profile: EngineProfile) => checkProfile(profile).map(({ path }) => path);

describe("contact breaker and carburettor", () => {
  it("are taken beside a distributor, together or one of them", () => {
    const { switching, fuelling, ...plain } = OLD;
    for (const built of [{ switching }, { fuelling }, { switching, fuelling }] as EngineProfile[]) {
      expect(checkProfile({ ...plain, ...built })).toEqual([]);
    }
  });

  it("are refused with every other ignition, each at its own path", () => {
    for (const ignition of IGNITION_KINDS.filter((kind) => kind !== "distributor")) {
      expect(pathsOf({ ...OLD, ignition }), ignition).toEqual(["/switching", "/fuelling"]);
      const later = { ...OLD, ignition, switching: "electronic", fuelling: "injection" } as const;
      expect(pathsOf(later), ignition).toEqual([]);
    }
  });

  it("have no diagnostic port, and who says that they have one is asked back", () => {
    expect(hasDiagnosticPort(OLD)).toBe(false);
    expect(pathsOf({ ...OLD, diagnosticPort: true })).toEqual(["/switching", "/fuelling"]);
    expect(pathsOf({ ...OLD, diagnosticPort: false })).toEqual([]);
    expect(hasDiagnosticPort({ ...OLD, switching: "electronic", fuelling: "injection" })).toBe(
      true,
    );
  });

  it("are words of a list, and another word names them", () => {
    const wrong = { ...OLD, fuelling: "steam" } as unknown as EngineProfile;
    const [problem] = checkProfile(wrong);
    expect(problem).toMatchObject({ code: "build-wrong", path: "/fuelling" });
    expect(problem?.hint).toMatch(/"injection", or "carburettor" with a distributor/);
    expect(profileSchema.safeParse(wrong).success).toBe(false);
  });

  it("come in with a case, and what is said outright ranks as what is left out", () => {
    expect(parseCase({ engine: OLD, findings: [] })).toMatchObject({ case: { engine: OLD } });
    const plover = profileById("demo.plover") as EngineProfile;
    const said = { ...plover, switching: "electronic", fuelling: "injection" } as const;
    expect(rank(said, []).ranking).toEqual(rank(plover, []).ranking);
  });
});
