// Does every number say where it comes from?
import { KNOWLEDGE } from "../../packages/core/src/index.ts";
import { CITED_WORKS } from "../../packages/core/src/knowledge/cited-work.ts";
import { CODES_FROM_MISFIRE, COUNTS_FROM_MISFIRE } from "../../packages/core/src/knowledge/code.ts";
import type { Grounds } from "../../packages/core/src/knowledge/schema.ts";
import { TWO_FAULTS_SHARE } from "../../packages/core/src/knowledge/something-else.ts";
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
    for (const check of KNOWLEDGE.checks) yield look(check.id, check.grounds);
    for (const { finding, option, grounds } of KNOWLEDGE.company) {
      yield look(`company ${finding}/${option}`, grounds);
    }
    yield look("two-faults-share", TWO_FAULTS_SHARE.grounds);
    yield look("codes-from-misfire", CODES_FROM_MISFIRE.grounds);
    yield look("counts-from-misfire", COUNTS_FROM_MISFIRE.grounds);
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
