// Does the knowledge stay free of any one engine's cylinders?
import { prose } from "../helper/knowledge-text.ts";
import { holds } from "../helper/rule.ts";

const NAMED = [
  /\bcylinders?\s+(?:no\.?\s*)?\d/i,
  /\bcylinder\s+(?:one|two|three|four|five|six|eight|ten|twelve)\b/i,
  /\b[1-9]\d?\s?(?:and|or|\/|\+|–|-)\s?[1-9]\d?\b(?!\s*(?:%|km|mm|V|kPa|°|times|years|minutes|seconds|N))/,
  /\bP03(?:0[1-9]|1[0-2])\b/,
];

holds({
  name: "no text names a cylinder",
  why: "Rows speak of `own`, `group` and `neighbours`; which cylinders these are, only an engine tells.",
  *check() {
    for (const { at, text } of prose()) {
      const found = NAMED.map((pattern) => text.match(pattern)?.[0]).find(Boolean);
      yield { at, breach: found === undefined ? undefined : `"${found}"` };
    }
  },
  exceptions: {},
});
