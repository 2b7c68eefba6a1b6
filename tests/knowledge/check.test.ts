// Can a check be made where it is proposed, and does it say what it takes?
import { shareOf } from "../../packages/core/src/compile/prior.ts";
import { IGNITION_KINDS, KNOWLEDGE } from "../../packages/core/src/index.ts";
import { holds } from "../helper/rule.ts";

/** Findings that only a running engine answers, after something was pressed home, dried or exchanged. */
const RUN_TO_TELL = { toldBy: ["connector.push", "wells-dried"], exchanged: "swap." };

const checks = new Map(KNOWLEDGE.checks.map((row) => [row.id, row]));

holds({
  name: "the first check of a fault can be made on every ignition kind that has the fault",
  why: "A rail has no coil to exchange, a distributor engine no pair to compare.",
  *check() {
    for (const fault of KNOWLEDGE.faults) {
      const suits = checks.get(fault.firstCheck)?.suits ?? IGNITION_KINDS;
      for (const kind of IGNITION_KINDS) {
        if (shareOf(fault, kind) === 0) continue;
        yield { at: `${fault.id}/${kind}`, breach: suits.includes(kind) ? undefined : "does not" };
      }
    }
  },
  exceptions: {},
});

holds({
  name: "every finding that is looked for, measured or tried is answered by a check",
  why: "A question nobody is told how to answer stays unanswered.",
  *check() {
    const yielded = new Set(KNOWLEDGE.checks.flatMap(({ yields }) => yields));
    const topics = ["plugs and wells", "live data", "measured", "tried"];
    for (const { id, topic } of KNOWLEDGE.findings.values()) {
      if (!topics.includes(topic)) continue;
      yield { at: id, breach: yielded.has(id) ? undefined : "no check answers it" };
    }
  },
  exceptions: {},
});

holds({
  name: "a check that lets a coil fire outside its cylinder warns of the open spark",
  why: "An output that hangs open ruins the coil, and the spark looks for the hand.",
  *check() {
    for (const { id, yields, cautions } of KNOWLEDGE.checks) {
      if (!yields.includes("spark") && !yields.includes("spark.stress")) continue;
      const isWarned = ["high-voltage", "open-spark", "fuel"].every((c) => cautions.includes(c));
      yield { at: id, breach: isWarned ? undefined : "does not" };
    }
  },
  exceptions: {},
});

holds({
  name: "a check that needs a diagnostic port names the one that is made without it",
  why: "An engine without on-board diagnosis has nothing to plug a reader in.",
  *check() {
    for (const { id, tool, switching, fuelling, instead } of KNOWLEDGE.checks) {
      const isThere = instead !== undefined && checks.has(instead);
      const isForAll = tool !== "code reader" && !switching && !fuelling;
      const isSound = tool === "code reader" ? isThere : isThere || instead === undefined;
      yield { at: id, breach: isSound ? undefined : `names ${instead}` };
      yield { at: `${id}/all`, breach: isForAll && instead ? "is never replaced" : undefined };
    }
  },
  exceptions: {},
});

holds({
  name: "what only a code reader answers is marked as told through the port",
  why: "Unmarked it would be asked on an engine that cannot tell it.",
  *check() {
    for (const { id, throughPort } of KNOWLEDGE.findings.values()) {
      const by = KNOWLEDGE.checks.filter(({ yields }) => yields.includes(id));
      const isOnlyRead = by.length > 0 && by.every(({ tool }) => tool === "code reader");
      // Exhaust gas and tank valves are there without a port; only their commands are not.
      if (!isOnlyRead || id === "command") continue;
      yield { at: id, breach: throughPort ? undefined : "is not" };
    }
  },
  exceptions: {},
});

holds({
  name: "a check that pulls boots, cables or coils off may break one, 2 to 5 times in 100",
  why: "Old rubber and clips are brittle; who pulls them for every doubt makes faults.",
  *check() {
    for (const { id, access = [], breaks = 0 } of KNOWLEDGE.checks) {
      const pulls = ["access.rail", "access.cable", "access.coil", "access.plug"];
      if (!access.some((open) => pulls.includes(open))) continue;
      yield { at: id, breach: breaks >= 0.02 && breaks <= 0.05 ? undefined : `breaks ${breaks}` };
    }
  },
  exceptions: {},
});

holds({
  name: "a check that ends with running the engine warns of its exhaust",
  why: "Where the engine must not run, that caution is what holds the check back or shortens it.",
  *check() {
    const { toldBy, exchanged } = RUN_TO_TELL;
    for (const { id, yields, cautions } of KNOWLEDGE.checks) {
      if (!yields.some((each) => toldBy.includes(each) || each.startsWith(exchanged))) continue;
      yield { at: id, breach: cautions.includes("exhaust-gas") ? undefined : "does not" };
    }
  },
  exceptions: {
    "check.boot-look": "A look first; boots are exchanged only where they come off singly.",
  },
});

holds({
  name: "who takes a plug out has the same hand for it, to look at it or to mend it",
  why: "A repair offered to somebody who may not make the check behind the same cover contradicts it.",
  *check() {
    const least = checks.get("check.plugs-out")?.skill ?? 0;
    for (const { id, access = [], skill } of [...KNOWLEDGE.checks, ...KNOWLEDGE.repairs]) {
      if (!access.includes("access.plug")) continue;
      yield { at: id, breach: skill >= least ? undefined : `skill ${skill} < ${least}` };
    }
  },
  exceptions: {},
});
