// Does every number say where it comes from?
import { DRIVE_RULES, KNOWLEDGE, LIMP_HOME } from "../../packages/core/src/index.ts";
import { CITED_WORKS } from "../../packages/core/src/knowledge/cited-work.ts";
import { CODES_FROM_MISFIRE, COUNTS_FROM_MISFIRE } from "../../packages/core/src/knowledge/code.ts";
import { MISSING_CYLINDER } from "../../packages/core/src/knowledge/drive-level.ts";
import { PROOF_GROUNDS, PROOF_RULES } from "../../packages/core/src/knowledge/proof-drive.ts";
import type { Grounds } from "../../packages/core/src/knowledge/schema.ts";
import { TWO_FAULTS_SHARE } from "../../packages/core/src/knowledge/something-else.ts";
import { WEAR_PATTERNS, WEAR_RULES } from "../../packages/core/src/knowledge/wear-pattern.ts";
import { holds, type Looked } from "../helper/rule.ts";

const BASES = ["published", "common practice", "memory"];
const CONFIDENCES = ["high", "medium", "low"];
const works = new Set<string>(CITED_WORKS.map(({ id }) => id));

holds({
  name: "every number has grounds",
  why: "A reader must be able to tell a published figure from somebody's estimate.",
  *check() {
    for (const fault of [...KNOWLEDGE.faults, KNOWLEDGE.somethingElse]) {
      yield look(fault.id, fault.grounds);
      for (const risk of fault.risks) {
        yield look(`${fault.id}/risks/${risk.finding}`, risk.grounds ?? fault.grounds);
      }
      for (const sign of fault.signs) {
        yield look(`${fault.id}/signs/${sign.finding}`, sign.grounds ?? fault.grounds);
      }
      for (const wear of fault.wears ?? []) {
        yield look(`${fault.id}/wears/${wear.fault}`, wear.grounds ?? fault.grounds);
      }
    }
    for (const finding of KNOWLEDGE.findings.values()) yield look(finding.id, finding.grounds);
    for (const row of [...KNOWLEDGE.checks, ...KNOWLEDGE.repairs, ...KNOWLEDGE.access]) {
      yield look(row.id, row.grounds);
    }
    for (const { finding, option, grounds } of KNOWLEDGE.company) {
      yield look(`company ${finding}/${option}`, grounds);
    }
    yield look("two-faults-share", TWO_FAULTS_SHARE.grounds);
    yield look("codes-from-misfire", CODES_FROM_MISFIRE.grounds);
    yield look("counts-from-misfire", COUNTS_FROM_MISFIRE.grounds);
    for (const { id, grounds } of [...DRIVE_RULES, ...WEAR_PATTERNS]) yield look(id, grounds);
    yield look("limp-home", LIMP_HOME.grounds);
    yield look("limp-home/limits", LIMP_HOME.limits.grounds);
    yield look("missing-cylinder", MISSING_CYLINDER.grounds);
    yield look("proof", PROOF_GROUNDS);
    yield look("proof-rules", PROOF_RULES.grounds);
    yield look("wear-rules", WEAR_RULES.grounds);
  },
  exceptions: {},
});

function look(at: string, grounds: Grounds | undefined): Looked {
  return { at, breach: grounds ? wrong(grounds) : "has no grounds" };
}

function wrong({ basis, confidence, source }: Grounds): string | undefined {
  if (!BASES.includes(basis)) return `basis ${basis} is unknown`;
  if (!CONFIDENCES.includes(confidence)) return `confidence ${confidence} is unknown`;
  if (basis === "published" && source === undefined) return "is published, but by whom?";
  if (basis !== "published" && source !== undefined) return "has a source, but is not published";
  if (source !== undefined && !works.has(source)) return `${source} is not in cited-work.ts`;
  return undefined;
}
