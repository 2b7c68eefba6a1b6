// What belongs on the one page that is handed on? A case and its ranking in, lines to print out.
import {
  CAUTIONS,
  type CautionRow,
  type CylinderName,
  type Engine,
  type EngineProfile,
  type Finding,
  type FindingRow,
  type PlugRecord,
  profileById,
  type Ranking,
  type RepairDone,
  type RepairRow,
  sayProbability,
  type Topic,
  type WearReport,
} from "@half-order/core";
import type { CaseDocument } from "@half-order/core/wire";
import { sayDay } from "../record/day.ts";
import { sayLook, sayPutIn } from "../record/look.ts";
import { type PartGroup, partGroups } from "../state/group.ts";
import { sayQuantity } from "../state/unit.ts";
import { sayEngine, sayGroup, sayProfile } from "../text/answer.ts";
import { sayAnswer, sayAsked } from "../text/asked.ts";
import { LEDGER, list, RANKING } from "../text/en.ts";
import { NEXT, WEAR } from "../text/en-record.ts";
import { sayPercent } from "../ui/chance.tsx";

/** One answer: what was asked, and what was seen. */
export interface AnswerLine {
  readonly asked: string;
  readonly answer: string;
}

/** A part that may have failed, or several alike, or what no catalogue holds. */
export interface LikelyLine {
  readonly key: string;
  /** Id of its likeliest fault; left out for what no catalogue holds. */
  readonly fault?: string;
  readonly name: string;
  /** The likeliest way in which it failed, where there are several. */
  readonly likeliest?: string;
  readonly probability: number;
  /** True where it stands for several parts, each with this chance. */
  readonly isEach: boolean;
  /** "about 6 in 10". */
  readonly words: string;
  /** "61 %". */
  readonly number: string;
}

/** The engine below the title of a page: its name where the title is another, and what the name leaves out. */
export function engineLine({ title, engine }: CaseDocument, profile: EngineProfile): string {
  const [name, facts] = [sayProfile(engine), sayEngine(profile)];
  const isSaid = facts === name || isNamedByKind(profile);
  return [...(title ? [name] : []), ...(isSaid ? [] : [facts])].join(", ");
}

/** True of engines of the catalogue whose name says all that they are like. */
function isNamedByKind({ id = "", name }: EngineProfile): boolean {
  const known = profileById(id);
  return known !== undefined && !known.invented && known.name === name;
}

/** Topics of what somebody looked at, measured or tried; all others tell what the engine does. */
const CHECKED: ReadonlySet<Topic> = new Set(["plugs and wells", "live data", "measured", "tried"]);

export interface AnswerLines {
  readonly does: readonly AnswerLine[];
  readonly checked: readonly AnswerLine[];
}

/**
 * The answers in the order in which they were given. Cylinders with the same answer to the same question
 * share a line, so that six good plugs do not fill half a page.
 */
export function answerLines(
  findings: readonly Finding[],
  rowOf: (id: string) => FindingRow | undefined,
  engine?: Engine,
): AnswerLines {
  const groups = new Map<string, Finding[]>();
  for (const finding of findings) {
    const key = JSON.stringify([finding.finding, finding.answer, finding.cylinder === undefined]);
    groups.set(key, [...(groups.get(key) ?? []), finding]);
  }
  const does: AnswerLine[] = [];
  const checked: AnswerLine[] = [];
  for (const same of groups.values()) {
    const [first] = same;
    if (!first) continue;
    const row = rowOf(first.finding);
    const line = {
      asked: sayAskedOfAll(row, first, same, engine),
      answer: sayAnswer(row, first.answer),
    };
    (row && CHECKED.has(row.topic) ? checked : does).push(line);
  }
  return { does, checked };
}

function sayAskedOfAll(
  row: FindingRow | undefined,
  first: Finding,
  same: readonly Finding[],
  engine: Engine | undefined,
): string {
  if (first.cylinder === undefined || same.length === 1) return sayAsked(row, first, engine);
  const cylinders = same.flatMap(({ cylinder }) => cylinder ?? []);
  return sayAsked(row, { finding: first.finding, cylinder: list(cylinders) });
}

/** Parts less likely than this need no line of the page. */
const WORTH_A_LINE = 0.02;
const MOST_LINES = 5;

/**
 * What remains likely, part by part as on the screen, the likeliest first, with what no catalogue holds in its
 * place among them.
 */
export function likelyLines(ranking: Ranking, somethingElse: string): readonly LikelyLine[] {
  const parts = partGroups(ranking)
    .filter(({ probability }) => probability >= WORTH_A_LINE)
    .slice(0, MOST_LINES)
    .map(partLine);
  const other = likelyLine("something-else", somethingElse, ranking.somethingElse);
  return [...parts, other].sort((a, b) => b.probability - a.probability);
}

function partLine(group: PartGroup): LikelyLine {
  const { key, faults, places, probability } = group;
  const [first, ...others] = faults;
  return {
    ...likelyLine(key, sayGroup(group), probability),
    isEach: places.length > 1,
    ...(first ? { fault: first.fault } : {}),
    ...(first && others.length > 0
      ? { likeliest: RANKING.likeliest(first.name, others.length) }
      : {}),
  };
}

function likelyLine(key: string, name: string, probability: number): LikelyLine {
  const [words, number] = [sayProbability(probability), sayPercent(probability)];
  return { key, name, isEach: false, probability, words, number };
}

/**
 * A repair as it was done here: "Renew the coil of 2 and 5". `isVague`: the engine is one of several that it may be,
 * so nobody can say which cylinders share a coil.
 */
export function sayRepair(
  { repair, cylinder }: RepairDone,
  row: RepairRow | undefined,
  engine: Engine,
  isVague = false,
): string {
  const at = isVague && row?.at === "coil" ? undefined : row;
  const place = cylinder === undefined ? "" : list(cylindersOf(at, cylinder, engine));
  const name = row?.name ?? repair;
  if (name.includes("{at}")) return name.replace("{at}", place);
  return place === "" ? name : `${name} (${LEDGER.cylinder(place)})`;
}

/** All cylinders that share the part which was named by one of them. */
function cylindersOf(
  row: RepairRow | undefined,
  cylinder: CylinderName,
  engine: Engine,
): readonly CylinderName[] {
  const own = engine.names.indexOf(cylinder);
  const sharing =
    row?.at === "coil"
      ? engine.groups.find((group) => group.includes(own))
      : row?.at === "connector"
        ? engine.connectors.find(({ cylinders }) => cylinders.includes(own))?.cylinders
        : undefined;
  return sharing?.map((c) => engine.names[c] ?? c) ?? [cylinder];
}

/** The cautions that the answers call for, then those of the check that comes first; none twice. */
export function cautionsOf(
  ranking: Ranking,
  ofCheck: (id: string) => readonly string[],
): readonly CautionRow[] {
  const first = ranking.ranking[0]?.firstCheck;
  const ids = [...ranking.cautions, ...(first === undefined ? [] : ofCheck(first))];
  return [...new Set(ids)].flatMap((id) => CAUTIONS.find((row) => row.id === id) ?? []);
}

/** The last set of plugs that came out: when, with which gaps and looks, and what that points to. */
export function plugLine(record: PlugRecord, report: WearReport): AnswerLine {
  const plugs = record.plugs.flatMap((plug) => {
    const { cylinder, gapMm, look } = plug;
    const isApart = report.lines.some((line) => line.cylinder === cylinder && line.isOutlier);
    const seen = [
      gapMm === undefined ? undefined : sayQuantity(gapMm, "gap"),
      look === undefined ? undefined : sayLook(look),
      sayPutIn(plug),
    ].filter((each) => each !== undefined);
    const apart = isApart ? ` (${WEAR.standsApart})` : "";
    return seen.length > 0 ? [`${cylinder}: ${seen.join(", ")}${apart}`] : [];
  });
  const { wentIn } = record.course ?? {};
  const then = wentIn === undefined ? [] : [`${NEXT.wentIn} ${NEXT.wentInWords[wentIn]}`];
  const words = [...report.patterns.map(({ say }) => say.replace(/\.$/, "")), ...then];
  return {
    asked: `${sayDay(record.when)}, ${sayQuantity(record.odometerKm, "distance")}:`,
    answer: [plugs.join("; "), ...words].filter((part) => part !== "").join(". "),
  };
}
