import { it } from "vitest";
import { readFileSync } from "node:fs";
import { KNOWLEDGE, rank, resolveEngine } from "/work/main/packages/core/src/index.ts";
import { compile } from "/work/main/packages/core/src/compile/compile.ts";
import { evidenceOf } from "/work/main/packages/core/src/inference/evidence.ts";
import { parseCase } from "/work/main/packages/core/src/wire/index.ts";
it("x", () => {
  for (const l of ["a","b","c","d","e"]) {
    const {engine,findings}=(parseCase(JSON.parse(readFileSync(`/work/main/fixtures/case/${l}.json`,"utf8"))) as any).case;
    const e=resolveEngine(engine); const t0=performance.now(); const c=compile(e,findings,KNOWLEDGE); const t1=performance.now();
    const k=evidenceOf(c.model).kinds; rank(engine,findings); const t2=performance.now(); rank(engine,findings); const t3=performance.now();
    console.log("K",l,"kinds",k,"faults",c.model.faults,"compile",(t1-t0).toFixed(1),"rank",(t3-t2).toFixed(0));
  }
});
