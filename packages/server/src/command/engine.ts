// `half-order engine` and `half-order engines`: what follows from an engine's firing order.
import {
  allProfiles,
  describeEngine,
  type EngineDescription,
  type EngineProfile,
  InputError,
  resolveEngine,
} from "@half-order/core";
import { nearest, profileSchema, readShape } from "@half-order/core/wire";
import { refuseCase } from "./case-input.ts";
import { type Input, plainWords, readJson, UsageError } from "./input.ts";
import { dashed, json, table, wrapped } from "./text.ts";

export async function enginesCommand(args: readonly string[]): Promise<string> {
  const { isJson } = plainWords(args, 0);
  const profiles = allProfiles();
  if (isJson) return json(profiles);
  return table(profiles.map(({ id = "", name = "", invented }) => [id, name + mark(invented)]));
}

export async function engineCommand(args: readonly string[], stdin: Input): Promise<string> {
  const { isJson, names } = plainWords(args, 1);
  const description = describeEngine(resolveEngine(await readProfile(names[0], stdin)));
  return isJson ? json(description) : describe(description);
}

/** A word that looks like a file is read as one; any other is the id of an engine. */
async function readProfile(word: string | undefined, stdin: Input): Promise<EngineProfile> {
  const isFile = word === undefined || word === "-" || /\.json$|[\\/]/i.test(word);
  if (!isFile) return profileOf(word);
  const value = await readJson(word, stdin);
  refuseCase(value);
  const reading = readShape(profileSchema, value);
  if ("problems" in reading) throw new InputError(reading.problems);
  return reading.value;
}

function profileOf(id: string): EngineProfile {
  const profiles = allProfiles();
  const profile = profiles.find((candidate) => candidate.id === id);
  if (profile) return profile;
  const ids = profiles.flatMap((candidate) => candidate.id ?? []);
  const close = nearest(id, ids, Number.POSITIVE_INFINITY).slice(0, 3).join(", ");
  throw new UsageError(`No engine has the id ${id}; the nearest are ${close}.`);
}

function mark(invented: boolean | undefined): string {
  return invented ? " (invented)" : "";
}

function describe(engine: EngineDescription): string {
  const head = [engine.name ?? engine.id ?? "Engine", mark(engine.isInvented)].join("");
  const parts = [
    ["ignition", engine.ignition],
    ["firing order", dashed(engine.firingOrder)],
    ["companions", engine.pairs.map(dashed).join(", ") || "none"],
    ["coils", engine.groups.map(dashed).join(", ")],
    [
      "connectors",
      engine.connectors.map(({ name, feeds }) => `${name} (${feeds.join(", ")})`).join(", "),
    ],
    ["banks", engine.banks.map(dashed).join(", ")],
    ["side by side", engine.neighbours.map(dashed).join(", ") || "none"],
    ["pairing mismatch", `${engine.mismatchDeg}°`],
  ];
  const cylinders = engine.cylinders.map(({ name, angleDeg, companion, bank, hasLead }) => [
    String(name),
    `${angleDeg}°`,
    companion === undefined ? "-" : String(companion),
    String(bank),
    hasLead ? "cable" : "coil on plug",
  ]);
  const heads = ["cylinder", "fires at", "companion", "bank", "spark by"];
  return [
    `${head}\n\n`,
    table(parts),
    "\n",
    table([heads, ...cylinders]),
    "\n",
    wrapped(engine.explanation),
  ].join("");
}
