// The next service: by distance, by months, or by the gap, whichever comes first.
import { describe, expect, it } from "vitest";
import {
  type EngineProfile,
  type InputError,
  type LastService,
  nextService,
} from "../../../packages/core/src/index.ts";

const profile: EngineProfile = {
  cylinders: 4,
  ignition: "pack",
  figures: { serviceKm: 60_000, serviceMonths: 48 },
};
const last: LastService = { fittedOn: "2026-11-25", fittedAtKm: 130_000 };

describe("nextService", () => {
  it("tells distance and day apart while the pace is not known", () => {
    expect(nextService(profile, last)).toEqual({
      atKm: 190_000,
      onDay: "2030-11-25",
      dueOn: "2030-11-25",
    });
  });

  it("takes whichever comes first", () => {
    // 30,000 km a year: 60,000 km are two years of 365.2425 days, 730 whole days
    const fast = nextService(profile, { ...last, kmPerYear: 30_000 });
    expect(fast).toMatchObject({ atKmOnDay: "2028-11-24", dueOn: "2028-11-24", by: "distance" });
    const slow = nextService(profile, { ...last, kmPerYear: 5000 });
    expect(slow).toMatchObject({ dueOn: "2030-11-25", by: "months" });
    expect(slow.atKmOnDay).toBe("2038-11-24");
  });

  it("comes sooner when a gap does", () => {
    const soon = nextService(profile, { ...last, gapLimitAtKm: 150_000, kmPerYear: 20_000 });
    expect(soon).toMatchObject({ atKm: 150_000, atKmOnDay: "2027-11-25", by: "gap" });
    const late = nextService(profile, { ...last, gapLimitAtKm: 250_000, kmPerYear: 20_000 });
    expect(late).toMatchObject({ atKm: 190_000, by: "distance" });
  });

  it("uses what figures there are", () => {
    const bare: EngineProfile = { cylinders: 4, ignition: "pack" };
    expect(nextService(bare, last)).toEqual({});
    expect(
      nextService({ ...bare, figures: { serviceMonths: 3 } }, { ...last, fittedOn: "2026-11-30" }),
    ).toEqual({
      onDay: "2027-02-28",
      dueOn: "2027-02-28",
    });
    expect(nextService({ ...bare, figures: { serviceKm: 20_000 } }, last)).toEqual({
      atKm: 150_000,
    });
  });

  it("refuses every wrong field at its path", () => {
    const wrong = { fittedOn: "today", fittedAtKm: -5, kmPerYear: 0, gapLimitAtKm: Number.NaN };
    try {
      nextService({ ...profile, figures: { serviceMonths: 1.5 } }, wrong);
      expect.unreachable();
    } catch (error) {
      expect((error as InputError).problems.map(({ path }) => path)).toEqual([
        "/fittedOn",
        "/fittedAtKm",
        "/gapLimitAtKm",
        "/kmPerYear",
        "/figures/serviceMonths",
      ]);
    }
  });
});
