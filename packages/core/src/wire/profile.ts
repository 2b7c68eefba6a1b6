// What an engine profile looks like when it comes from outside. Only its shape: whether it makes sense
// is checked in the engine room.
import { z } from "zod";
import { MAX_CYLINDERS } from "../engine/check-profile.ts";
import {
  type CylinderName,
  type EngineProfile,
  FUELLINGS,
  IGNITION_KINDS,
  SWITCHINGS,
} from "../engine/profile.ts";
import { lineSchema } from "./text.ts";

/** Longest list of cylinders; a longer one is no engine but a flood. */
const MANY = 64;

export const cylinderNameSchema: z.ZodType<CylinderName, CylinderName> = z
  .union([z.number(), lineSchema(8).min(1)])
  .meta({ description: "A cylinder as its maker names it", examples: [3, "R1"] });

/** A list of cylinders, described for its field. */
function cylinders(description: string, example: readonly CylinderName[]) {
  return z
    .array(cylinderNameSchema)
    .max(MANY)
    .meta({ description, examples: [example] });
}

function range(description: string, example: readonly [number, number]) {
  const limits = z.tuple([z.number(), z.number()]);
  return limits.meta({ description, examples: [example] }).exactOptional();
}

const figuresSchema = z
  .strictObject({
    plugElectrode: z
      .enum(["nickel", "platinum", "double-platinum", "iridium", "other"])
      .exactOptional(),
    plugGapMm: range("Smallest and largest gap in millimetres", [0.9, 1.1]),
    plugThread: z.enum(["M8", "M10", "M12", "M14", "M18"]).exactOptional(),
    plugSeat: z.enum(["gasket", "taper"]).exactOptional(),
    headMetal: z.enum(["aluminium", "iron"]).exactOptional(),
    plugTorqueNm: range("Tightening torque in N·m", [20, 25]),
    coilPrimaryOhm: range("Resistance of the primary winding in ohms", [0.5, 0.7]),
    coilSecondaryOhm: range("Resistance of the secondary winding in ohms", [9000, 13000]),
    injectorOhm: range("Resistance of an injector in ohms", [12, 16]),
    idleRpm: range("Idle speed in revolutions a minute", [650, 750]),
    compressionKPa: range("Compression in kilopascals", [1000, 1350]),
    fuelPressureKPa: range("Fuel pressure in kilopascals", [330, 370]),
    serviceKm: z
      .number()
      .meta({ description: "Kilometres between changes of the plugs", examples: [60000] })
      .exactOptional(),
    serviceMonths: z
      .number()
      .meta({ description: "Months between changes of the plugs", examples: [48] })
      .exactOptional(),
  })
  .meta({
    description: "Figures of the vehicle maker's service manual; each may be left out",
    examples: [{ plugGapMm: [0.9, 1.1] }],
  });

const connectorSchema = z
  .strictObject({
    name: lineSchema(80).meta({ description: "What to call it", examples: ["coil rail"] }),
    feeds: cylinders("The cylinders whose coils it feeds", [1, 4]),
  })
  .meta({
    description: "A plug-in connector of the ignition",
    examples: [{ name: "coil rail", feeds: [1, 4] }],
  });

const coverSchema = z
  .strictObject({
    name: lineSchema(80).meta({ description: "What to call it", examples: ["inlet manifold"] }),
    cylinders: cylinders("The cylinders that it covers", [1, 3, 5]),
    minutes: z
      .number()
      .meta({ description: "Minutes to take it off and put it back", examples: [60] }),
  })
  .meta({
    description: "Something that must come off before a hand gets at the plugs",
    examples: [{ name: "inlet manifold", cylinders: [1, 3, 5], minutes: 60 }],
  });

export const profileSchema: z.ZodType<EngineProfile, EngineProfile> = z
  .strictObject({
    id: lineSchema(80).meta({ description: "A name for programs" }).exactOptional(),
    name: lineSchema(120).meta({ description: "A name for people" }).exactOptional(),
    invented: z
      .boolean()
      .meta({ description: "True for demo engines: nothing about them is real" })
      .exactOptional(),
    cylinders: z
      .int()
      .min(1)
      .max(MAX_CYLINDERS)
      .meta({ description: "How many cylinders the engine has", examples: [4] }),
    layout: z
      .enum(["inline", "v", "flat"])
      .meta({ description: "How the cylinders stand" })
      .exactOptional(),
    banks: z
      .array(cylinders("The cylinders of one bank from front to back", [1, 3, 5]))
      .max(MANY)
      .meta({
        description: "A list of cylinders for each bank, from front to back",
        examples: [
          [
            [1, 3, 5],
            [2, 4, 6],
          ],
        ],
      })
      .exactOptional(),
    neighbours: z
      .array(
        z
          .tuple([cylinderNameSchema, cylinderNameSchema])
          .meta({ description: "Two cylinders side by side", examples: [[1, 2]] }),
      )
      .max(MANY)
      .meta({ description: "Pairs of cylinders side by side in the block", examples: [[[1, 2]]] })
      .exactOptional(),
    firingOrder: cylinders(
      "All cylinders in the order in which they fire; leave it out when it is not known",
      [1, 3, 4, 2],
    ).exactOptional(),
    firingIntervals: z
      .array(z.number())
      .max(MANY)
      .meta({
        description: "Crank degrees from each firing to the next, 720 in all; even unless given",
        examples: [[90, 150, 90, 150, 90, 150]],
      })
      .exactOptional(),
    ignition: z.enum(IGNITION_KINDS).meta({ description: "How the plugs get their spark" }),
    firingGroups: z
      .array(cylinders("The cylinders that one coil fires", [1, 4]))
      .max(MANY)
      .meta({
        description: "The cylinders that each coil fires; worked out from the order unless given",
        examples: [
          [
            [1, 4],
            [2, 3],
          ],
        ],
      })
      .exactOptional(),
    pairingToleranceDeg: z
      .number()
      .meta({
        description: "How far from 360 degrees apart two cylinders on one coil may fire",
        examples: [30],
      })
      .exactOptional(),
    coilOn: cylinders(
      "Hybrid only: the cylinders whose plug carries the coil",
      [1, 3],
    ).exactOptional(),
    connectors: z
      .array(connectorSchema)
      .max(MANY)
      .meta({
        description: "The connectors of the ignition",
        examples: [[{ name: "coil rail", feeds: [1, 2, 3, 4] }]],
      })
      .exactOptional(),
    covers: z
      .array(coverSchema)
      .max(MANY)
      .meta({
        description: "What must come off before a hand gets at the plugs of some cylinders",
        examples: [[{ name: "inlet manifold", cylinders: [1, 3, 5], minutes: 60 }]],
      })
      .exactOptional(),
    fuel: z.enum(["petrol", "petrol-and-gas", "alcohol-blend"]).exactOptional(),
    switching: z
      .enum(SWITCHINGS)
      .meta({ description: "What cuts the current of the coil; electronic unless given" })
      .exactOptional(),
    fuelling: z
      .enum(FUELLINGS)
      .meta({ description: "How petrol gets into the air; injection unless given" })
      .exactOptional(),
    diagnosticPort: z
      .boolean()
      .meta({
        description:
          "False for an engine without on-board diagnosis; true unless given, or older by its build",
      })
      .exactOptional(),
    figures: figuresSchema.exactOptional(),
  })
  .meta({
    id: "EngineProfile",
    description: "An engine as its user knows it",
    examples: [{ cylinders: 4, firingOrder: [1, 3, 4, 2], ignition: "rail" }],
  });
