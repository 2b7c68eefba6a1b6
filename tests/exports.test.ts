// The doors of core, name by name: a name comes or goes only on purpose.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import * as door from "../packages/core/src/index.ts";
import * as instrument from "../packages/core/src/instrument/index.ts";
import * as wire from "../packages/core/src/wire/index.ts";
import { withoutComments } from "./helper/import.ts";

const DOOR = {
  values: [
    "CAUTIONS",
    "CHECKS",
    "CODE_FAMILIES",
    "FAULTS",
    "FINDINGS",
    "IGNITION_KINDS",
    "InputError",
    "KNOWLEDGE",
    "MISFIRE_CODES",
    "REPAIR_RESULTS",
    "allProfiles",
    "candidateEngines",
    "checkFindings",
    "checkOverlay",
    "checkProfile",
    "describeEngine",
    "overlayKnowledge",
    "pointer",
    "profileById",
    "provenance",
    "rank",
    "resolveEngine",
    "sayProbability",
    "sensitivity",
    "shareOf",
    "why",
  ],
  types: [
    "Answer",
    "AtHand",
    "Basis",
    "CandidateEngine",
    "CautionRow",
    "CheckChange",
    "CheckRow",
    "CodeFamily",
    "CompanyRow",
    "Confidence",
    "Connector",
    "ConnectorProfile",
    "CylinderName",
    "Engine",
    "EngineDescription",
    "EngineProfile",
    "FaultAt",
    "FaultChange",
    "FaultRow",
    "Figures",
    "Finding",
    "FindingKind",
    "FindingRow",
    "Fit",
    "Grounds",
    "IgnitionKind",
    "Knowledge",
    "KnownNumber",
    "Layout",
    "Ledger",
    "LedgerLine",
    "NamedFlip",
    "NumberTable",
    "OptionRow",
    "OrderCandidate",
    "Overlay",
    "Problem",
    "Provenance",
    "PutRight",
    "Range",
    "RankOptions",
    "RankedComponent",
    "RankedCylinder",
    "RankedFault",
    "RankedHypothesis",
    "Ranking",
    "RepairDone",
    "RepairResult",
    "Sensitivity",
    "SensitivityOptions",
    "Stability",
    "Tally",
    "Topic",
  ],
};

const WIRE = {
  values: [
    "CASE_VERSION",
    "atHandSchema",
    "caseSchema",
    "cautionSchema",
    "checkSchema",
    "engineDescriptionSchema",
    "faultSchema",
    "findingRowSchema",
    "findingSchema",
    "ledgerSchema",
    "nearest",
    "overlaySchema",
    "parseCase",
    "parseOverlay",
    "profileSchema",
    "rankingSchema",
    "readShape",
    "repairDoneSchema",
    "resolveCase",
    "whySchema",
  ],
  types: ["Case", "CaseDocument", "CaseReading", "OverlayReading", "Reading", "WhyDocument"],
};

const INSTRUMENT = {
  values: [
    "BIN_EDGES",
    "brier",
    "deviations",
    "evenEdges",
    "expectedCalibrationError",
    "leading",
    "logLoss",
    "meanProbabilityOfTruth",
    "meanReciprocalRank",
    "murphy",
    "randomOf",
    "reliabilityBins",
    "samplerOf",
    "shakenKnowledge",
    "topK",
  ],
  types: [
    "AnswerSum",
    "AnsweredCase",
    "Bin",
    "Deviation",
    "DrawnCase",
    "Forecast",
    "Murphy",
    "Question",
    "Random",
    "Sampler",
    "Statement",
    "Truth",
  ],
};

describe.each([
  { name: "@half-order/core", file: "index.ts", module: door, expected: DOOR },
  {
    name: "@half-order/core/instrument",
    file: "instrument/index.ts",
    module: instrument,
    expected: INSTRUMENT,
  },
  { name: "@half-order/core/wire", file: "wire/index.ts", module: wire, expected: WIRE },
])("$name", ({ file, module, expected }) => {
  it("exports these values and no others", () => {
    expect(Object.keys(module).sort()).toEqual([...expected.values].sort());
  });

  it("exports these types and no others", () => {
    expect([...typesOf(file)].sort()).toEqual([...expected.types].sort());
  });
});

/** Names that a door exports as types; they leave no trace when it runs. */
function typesOf(file: string): readonly string[] {
  const path = join(import.meta.dirname, "../packages/core/src", file);
  const text = withoutComments(readFileSync(path, "utf8"));
  return [...text.matchAll(/^export\s+(type\s+)?\{([^}]*)\}/gm)].flatMap(([, isAll, list = ""]) =>
    list
      .split(",")
      .map((entry) => entry.trim())
      .filter((entry) => entry !== "" && (isAll !== undefined || entry.startsWith("type ")))
      .map(
        (entry) =>
          entry
            .replace(/^type\s+/, "")
            .split(/\s+as\s+/)
            .at(-1) ?? entry,
      ),
  );
}
