// The words of the record of plugs, of what it tells, and of units.
import type { NextService } from "@half-order/core";
import type { WentIn } from "../record/plan.ts";
import type { Quantity } from "../state/unit.ts";

export const UNIT = {
  title: "Units",
  help: "Kept on this device, for every case.",
  names: {
    gap: "Gap of a plug",
    torque: "Torque",
    distance: "Distance",
    pressure: "Pressure",
    temperature: "Temperature",
  } satisfies Record<Quantity, string>,
  notKept: "This device does not keep the choice: it holds until the page is closed.",
};

export const RECORD = {
  title: "Plugs out",
  lead: "Write down what you find on each plug. It shows which cylinder stands apart, and when the next set is due.",
  cautions: "Before a plug comes out",
  new: "A new record",
  change: (day: string): string => `Changing the record of ${day}`,
  when: "Day",
  odometer: "Odometer now",
  fittedAt: "Odometer when these plugs went in",
  fittedAtHelp: "Leave it empty when it is not known.",
  newGap: "Their gap when new",
  newGapHelp: "Leave it empty for the manual's figure.",
  plug: (cylinder: string): string => `Plug of cylinder ${cylinder}`,
  gap: "Gap as it came out",
  torque: "Torque of the plug that went in",
  torqueManual: (low: string, high: string): string => `Your manual: ${low} to ${high}.`,
  torqueHelp: "As your manual says; threads start by hand, into a cold head.",
  part: "Number on the plug that went in",
  sameForAll: "Same torque and number for all",
  sameDone: "Written to all plugs.",
  nextPlug: (cylinder: string): string => `Next: plug of cylinder ${cylinder}`,
  useAsFindings: "Use gaps and looks as findings of this case too",
  keep: "Keep this record",
  kept: "Kept with the case.",
  discard: "Start over",
  discardConfirm: "Throw away what is written",
  cannot: "This record cannot be kept yet",
  draftNotKept:
    "This device does not keep what is half written: keep the record before you leave the page.",
  missingOdometer: {
    code: "field-missing",
    path: "",
    message: "The odometer is missing.",
    hint: "Write what it reads now; wear is nothing without a distance.",
  },
  sameDay: {
    code: "day-taken",
    path: "",
    message: "There is a record of that day already.",
    hint: "Change that one, or correct the day.",
  },
  earlier: "Records of this case",
  show: "Show",
  edit: "Change",
  remove: "Delete",
  removeConfirm: "Delete for good",
  at: (distance: string): string => `at ${distance}`,
  plugs: (n: number): string => (n === 1 ? "1 plug" : `${n} plugs`),
};

export const PHOTO = {
  take: "Photo of this plug",
  another: "Another photo",
  remove: "Delete the photo",
  alt: (cylinder: string): string => `Your photo of the plug of cylinder ${cylinder}`,
  private: "Photos stay on this device. No case file, link or printed page holds them.",
  keeping: "Keeping …",
  unreadable: "This file is no picture that the browser can read.",
  full: "The device is full: this photo was not kept. Delete some photos, or free some room, and take it once more. All else is safe.",
  failed: "The device did not keep this photo. All else is safe.",
  notDeleted: "The record is gone, but its photos could not be deleted from this device.",
  cannotLook: "Photos on this device could not be read.",
  save: "Save the photos of this record as files",
  fileName: (day: string, cylinder: string): string => `plug-${cylinder}-${day}.jpg`,
};

export const WEAR = {
  title: (day: string): string => `What the record of ${day} tells`,
  cannot: "This record cannot be read on this engine",
  noGaps: "Measure the gaps to see how the plugs wear.",
  noDistance: "With the odometer at which these plugs went in, the wear gets a rate.",
  noLimit: "With the gap that the manual gives for this engine, the wear gets a limit.",
  key: {
    fresh: (gap: string): string => `as they went in, ${gap}: written in this record`,
    freshOfManual: (gap: string): string =>
      `as they went in, ${gap}: the middle of the manual's gap`,
    limit: (gap: string, percent: number): string =>
      `limit, ${gap}: ${percent} % over the manual's widest gap, where the page begins to call a plug worn`,
    usual: "usual for this metal and distance",
    apart: "stands apart from its set",
  },
  over: (range: string, gaps: string): string => `Over the ${range} of the manual: ${gaps}.`,
  noneOver: (range: string): string => `No gap is over the ${range} of the manual.`,
  under: (gaps: string): string => `Under it: ${gaps}.`,
  overLimit: (cylinders: string): string => `At the limit: cylinder ${cylinders}.`,
  ofCylinder: (gap: string, cylinder: string): string => `${gap} at cylinder ${cylinder}`,
  range: (low: string, high: string): string => `${low} to ${high}`,
  putIn: (what: string): string => `put in its place: ${what}`,
  apart: (cylinders: string, n: number): string =>
    n === 1 ? `Cylinder ${cylinders} stands apart.` : `Cylinders ${cylinders} stand apart.`,
  few: "There are few plugs to compare: take it as a hint.",
  standsApart: "stands apart",
  cylinder: "Cylinder",
  gap: "Gap",
  rate: (gap: string, distance: string, unit: string): string =>
    `Growth, ${gap} in ${distance} ${unit}`,
  toLimit: "To the limit",
  atLimit: "reached",
  unknown: "–",
};

export const MANUAL = {
  title: "Figures of your manual",
  help: "They are kept with the engine of this case.",
  gapFrom: "Gap, from",
  gapTo: "Gap, to",
  gapOrder: "The second figure of the gap is below the first.",
  every: "New plugs every",
  months: "or every so many months",
};

export const NEXT = {
  title: "The next plugs",
  wentIn: "What went in?",
  wentInWords: {
    new: "New plugs",
    same: "The same plugs again",
  } satisfies Record<WentIn, string>,
  pace: "You drive in a year",
  paceHelp: "Without it a distance has no day.",
  fittedOn: "Day on which these plugs first went in",
  sayFirst: "Say what went in: from there the next service is counted.",
  cannot: "The next service cannot be worked out",
  unknown: "Write above what your manual says, by distance or by months.",
  noDay: "With the distance you drive in a year, or the months of your manual, it gets a day.",
  at: (distance: string): string => `At ${distance}`,
  on: (day: string): string => `by ${day}`,
  whichever: "Whichever comes first.",
  by: {
    distance: "The distance comes first.",
    gap: "The gap comes to its limit first.",
    months: "The months come first.",
  } satisfies Record<NonNullable<NextService["by"]>, string>,
  calendar: "Save to the calendar",
  event: (engine: string): string => `Spark plugs: ${engine}`,
  eventAbout: "Worked out from the record of the last plugs. Your service manual overrules it.",
  fileName: (day: string): string => `plugs-${day}.ics`,
};
