// Do the rules about driving on name what exists, say all they must, and cover every lamp?
import { DRIVE_LEVELS, DRIVE_RULES, KNOWLEDGE, LIMP_HOME } from "../../packages/core/src/index.ts";
import { DRIVE_LEVEL_ROWS } from "../../packages/core/src/knowledge/drive-level.ts";
import { asked } from "../helper/drive-condition.ts";
import { holds } from "../helper/rule.ts";

const cautions = new Set(KNOWLEDGE.cautions.map(({ id }) => id));

holds({
  name: "a drive rule asks for findings and answers that exist",
  why: "A rule that can never hold protects nobody.",
  *check() {
    for (const { id, when } of DRIVE_RULES) {
      for (const { finding, is } of asked(when)) {
        const row = KNOWLEDGE.findings.get(finding);
        const options = row?.kind === "presence" ? ["yes"] : Object.keys(row?.options ?? {});
        for (const option of is) {
          const breach = options.includes(option) ? undefined : "does not exist";
          yield { at: `${id}/${finding}/${option}`, breach };
        }
      }
    }
  },
  exceptions: {},
});

holds({
  name: "a drive rule says why, what lifts it, what never to do, and warns",
  why: "An order without a reason is not followed, and nobody knows when it is over.",
  *check() {
    for (const { id, reason, lifts, never, cautions: warned, grounds } of DRIVE_RULES) {
      const isSaid = reason !== "" && lifts !== "" && never.length > 0 && warned.length > 0;
      yield { at: id, breach: isSaid ? undefined : "leaves something out" };
      for (const caution of warned) {
        yield { at: `${id}/${caution}`, breach: cautions.has(caution) ? undefined : "is unknown" };
      }
      const isHonest = grounds.basis !== "published" || grounds.source !== undefined;
      yield { at: `${id}/grounds`, breach: isHonest ? undefined : "published by whom?" };
    }
    for (const caution of LIMP_HOME.fuelCut.cautions) {
      yield {
        at: `limp home/${caution}`,
        breach: cautions.has(caution) ? undefined : "is unknown",
      };
    }
  },
  exceptions: {},
});

holds({
  name: "drive rules are written from the most cautious down, under ids of their own",
  why: "The table is read by people, from above.",
  *check() {
    const seen = new Set<string>();
    let last = 0;
    for (const { id, level } of DRIVE_RULES) {
      const rank = DRIVE_LEVELS.indexOf(level);
      const isSound = rank >= last && !seen.has(id) && id.startsWith("drive.");
      yield { at: id, breach: isSound ? undefined : "is out of order or there twice" };
      last = rank;
      seen.add(id);
    }
  },
  exceptions: {},
});

holds({
  name: "every state of the lamp has a rule of its own, and every level rules and steps",
  why: "Whoever has looked at the lamp gets an answer.",
  *check() {
    for (const option of Object.keys(KNOWLEDGE.findings.get("lamp")?.options ?? {})) {
      const isRuled = DRIVE_RULES.some(
        ({ when }) => "finding" in when && when.finding === "lamp" && when.is.includes(option),
      );
      yield { at: `lamp/${option}`, breach: isRuled ? undefined : "has no rule" };
    }
    for (const level of DRIVE_LEVELS) {
      const isUsed = DRIVE_RULES.some((rule) => rule.level === level);
      const steps = DRIVE_LEVEL_ROWS.find((row) => row.level === level)?.steps ?? [];
      yield { at: level, breach: isUsed && steps.length > 0 ? undefined : "is empty" };
    }
  },
  exceptions: {},
});

holds({
  name: "an answer that warns at once has a drive rule",
  why: "The ranking would warn and the advice on driving would not know of it.",
  *check() {
    const ruled = new Set(
      DRIVE_RULES.flatMap(({ when }) =>
        [...asked(when)].flatMap(({ finding, is }) => is.map((option) => `${finding}/${option}`)),
      ),
    );
    for (const { id, options } of KNOWLEDGE.findings.values()) {
      for (const [option, { caution }] of Object.entries(options)) {
        if (caution === undefined) continue;
        const breach = ruled.has(`${id}/${option}`) ? undefined : "is not in any drive rule";
        yield { at: `${id}/${option}`, breach };
      }
    }
  },
  exceptions: {},
});
