// What may the page run and load? Its own files, and what stands in its document as it was built.
import { createHash } from "node:crypto";

const OWN = "'self'";
const INLINE = /<(script|style)>(.*?)<\/\1>/gs;

/**
 * The directives of the security policy for a document, by their names. Scripts and styles within it are
 * named by what is in them (Content Security Policy Level 3, 2.3.1, hash sources), so that nothing that gets into it later runs.
 */
export function pagePolicy(html: string): Record<string, string[]> {
  const inline = [...html.matchAll(INLINE)].map(([, tag, text = ""]) => ({
    tag,
    source: `'sha256-${createHash("sha256").update(text).digest("base64")}'`,
  }));
  const within = (wanted: string): string[] =>
    inline.filter(({ tag }) => tag === wanted).map(({ source }) => source);
  return {
    "default-src": ["'none'"],
    "script-src": [OWN, ...within("script")],
    "style-src": [OWN, ...within("style")],
    "img-src": [OWN, "data:"],
    "connect-src": [OWN],
    "manifest-src": [OWN],
    "worker-src": [OWN],
    "font-src": [OWN],
    "base-uri": ["'none'"],
    "form-action": [OWN],
    "frame-ancestors": ["'none'"],
  };
}
