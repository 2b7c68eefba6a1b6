// Does every row name only rows that exist? (Types hold most of this; a bare string slips through.)
import { KNOWLEDGE, PUT_BACK } from "../../packages/core/src/index.ts";
import { CODE_FAMILIES } from "../../packages/core/src/knowledge/code.ts";
import { holds, type Looked } from "../helper/rule.ts";

const faults = new Set(KNOWLEDGE.faults.map(({ id }) => id));
const checks = new Set(KNOWLEDGE.checks.map(({ id }) => id));
const cautions = new Set(KNOWLEDGE.cautions.map(({ id }) => id));
const access = new Set(KNOWLEDGE.access.map(({ id }) => id));
const putBack = new Set<string>(PUT_BACK.map(({ id }) => id));
const parts = new Set(KNOWLEDGE.faults.map(({ part }) => part.name));

holds({
  name: "what a row refers to exists",
  why: "A reference into nothing shows up as a blank on somebody's screen.",
  *check() {
    for (const fault of [...KNOWLEDGE.faults, KNOWLEDGE.somethingElse]) {
      yield known(`${fault.id}/firstCheck`, fault.firstCheck, checks);
      for (const worn of fault.wears ?? []) yield known(`${fault.id}/wears`, worn.fault, faults);
      for (const { finding, gives } of fault.signs) {
        yield* options(`${fault.id}/signs`, finding, Object.keys(gives));
      }
      for (const { finding, times } of fault.risks) {
        yield* options(`${fault.id}/risks`, finding, Object.keys(times));
      }
    }
    for (const check of KNOWLEDGE.checks) {
      for (const id of check.cautions) yield known(`${check.id}/cautions`, id, cautions);
      for (const id of check.yields) yield known(`${check.id}/yields`, id, KNOWLEDGE.findings);
      for (const id of check.access ?? []) yield known(`${check.id}/access`, id, access);
      for (const id of check.putBack ?? []) yield known(`${check.id}/putBack`, id, putBack);
    }
    for (const row of KNOWLEDGE.access) {
      for (const id of row.putBack) yield known(`${row.id}/putBack`, id, putBack);
    }
    for (const repair of KNOWLEDGE.repairs) {
      for (const { fault } of repair.mends) yield known(`${repair.id}/mends`, fault, faults);
      for (const id of repair.cautions) yield known(`${repair.id}/cautions`, id, cautions);
      for (const id of repair.access ?? []) yield known(`${repair.id}/access`, id, access);
      for (const id of repair.putBack) yield known(`${repair.id}/putBack`, id, putBack);
    }
    for (const { id, options: own, fades } of KNOWLEDGE.findings.values()) {
      for (const { caution } of Object.values(own)) {
        if (caution !== undefined) yield known(`${id}/caution`, caution, cautions);
      }
      if (fades) yield known(`${id}/fades`, fades.of, KNOWLEDGE.findings);
    }
    for (const { finding, option, parts: named } of KNOWLEDGE.company) {
      yield* options("company", finding, [option]);
      for (const part of named) yield known(`company ${finding}/${option}/parts`, part, parts);
    }
    yield* options(
      "code families",
      "codes",
      CODE_FAMILIES.map(({ option }) => option),
    );
  },
  exceptions: {},
});

holds({
  name: "a fault speaks of each finding once, as a risk or as a sign",
  why: "What is both known beforehand and caused by the fault would be counted twice.",
  *check() {
    for (const { id, risks, signs } of KNOWLEDGE.faults) {
      const seen = new Set<string>();
      for (const { finding } of [...risks, ...signs]) {
        yield { at: `${id}/${finding}`, breach: seen.has(finding) ? "is there twice" : undefined };
        seen.add(finding);
      }
    }
  },
  exceptions: {},
});

holds({
  name: "a finding is a risk of all faults that speak of it, or a sign of all",
  why: "Known beforehand it shifts the odds, else it is seen: nobody could say how often both happen.",
  *check() {
    const signs = new Set(
      KNOWLEDGE.faults.flatMap((fault) => fault.signs.map((sign) => sign.finding)),
    );
    for (const { id, risks } of KNOWLEDGE.faults) {
      for (const { finding } of risks) {
        const breach = signs.has(finding) ? "is a sign of another fault" : undefined;
        yield { at: `${id}/risks/${finding}`, breach };
      }
    }
  },
  exceptions: {},
});

function known(at: string, id: string, ids: { has(id: string): boolean }): Looked {
  return { at: `${at}/${id}`, breach: ids.has(id) ? undefined : "does not exist" };
}

function* options(at: string, finding: string, named: readonly string[]): Generator<Looked> {
  yield known(at, finding, KNOWLEDGE.findings);
  const existing = KNOWLEDGE.findings.get(finding)?.options ?? {};
  for (const option of named) {
    yield known(`${at}/${finding}`, option, { has: (id) => id in existing });
  }
}
