// Do the covers of a profile lie over cylinders that it has, and does taking them off take time?
import { type Problem, pointer } from "../units/problem.ts";
import { cylinderNames } from "./cylinder-name.ts";
import type { EngineProfile } from "./profile.ts";

/** A day of work. */
const MOST_MINUTES = 1440;

export function checkCovers(profile: EngineProfile): readonly Problem[] {
  const names = cylinderNames(profile).map(String);
  return (profile.covers ?? []).flatMap(({ name, cylinders, minutes }, i): readonly Problem[] => {
    const strangers = cylinders.flatMap((cylinder, j) =>
      names.includes(String(cylinder))
        ? []
        : [
            {
              code: "cylinder-unknown",
              path: pointer("covers", i, "cylinders", j),
              message: `This engine has no cylinder ${cylinder}.`,
              hint: `Write one of ${names.join(", ")}.`,
            },
          ],
    );
    if (minutes >= 0 && minutes <= MOST_MINUTES) return strangers;
    return [
      ...strangers,
      {
        code: "cover-minutes",
        path: pointer("covers", i, "minutes"),
        message: `${minutes} minutes to take off "${name}" cannot be used.`,
        hint: `Write how long it takes to take it off and put it back, 0 to ${MOST_MINUTES}.`,
      },
    ];
  });
}
