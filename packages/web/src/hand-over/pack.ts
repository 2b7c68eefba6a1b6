// How does a text fit into the address of a page, and is it whole when it comes out again? Packed as small
// as the device can; a checksum finds what was cut off or changed on the way.

/** Why a packed text could not be read. */
export type PackTrouble =
  /** Its end is missing. */
  | "cut"
  /** Signs of it were changed. */
  | "damaged"
  /** A newer program packed it. */
  | "newer"
  /** This browser cannot undo the packing. */
  | "browser"
  /** It unpacks to more than any case holds. */
  | "large";

export type Unpacked = { readonly text: string } | { readonly trouble: PackTrouble };

const VERSION = 1;
/** After the version: how the text is packed. */
const [DEFLATED, PLAIN] = ["z", "p"] as const;
/** Checksum and length of what follows, 4 bytes each. */
const HEAD_BYTES = 8;
/** A case of a thousand findings has a quarter of this. */
const LARGEST_BYTES = 1 << 20;

/** Packs a text into letters, digits, `-` and `_`. */
export async function pack(text: string): Promise<string> {
  const plain = new TextEncoder().encode(text);
  const deflated = canDeflate()
    ? await through(plain, new CompressionStream("deflate-raw"))
    : undefined;
  const isSmaller = deflated !== undefined && deflated.length < plain.length;
  const body = isSmaller ? deflated : plain;
  const packed = new Uint8Array(HEAD_BYTES + body.length);
  const view = new DataView(packed.buffer);
  view.setUint32(0, checksum(body));
  view.setUint32(4, body.length);
  packed.set(body, HEAD_BYTES);
  return `${VERSION}${isSmaller ? DEFLATED : PLAIN}${toLetters(packed)}`;
}

/** The text that was packed, or what is wrong with the packing. Never rejects. */
export async function unpack(packed: string): Promise<Unpacked> {
  const [, version, kind, letters] = /^(\d{1,3})([a-z])([\w-]*)$/.exec(packed) ?? [];
  if (letters === undefined) return { trouble: packed.length < 3 ? "cut" : "damaged" };
  if (Number(version) > VERSION) return { trouble: "newer" };
  if (Number(version) < VERSION || (kind !== DEFLATED && kind !== PLAIN)) {
    return { trouble: "damaged" };
  }
  const bytes = fromLetters(letters);
  if (bytes === undefined || bytes.length < HEAD_BYTES) return { trouble: "cut" };
  const view = new DataView(bytes.buffer);
  const body = bytes.subarray(HEAD_BYTES);
  if (body.length < view.getUint32(4)) return { trouble: "cut" };
  if (body.length > view.getUint32(4) || checksum(body) !== view.getUint32(0)) {
    return { trouble: "damaged" };
  }
  return kind === PLAIN ? decoded(body) : inflated(body);
}

async function inflated(body: Uint8Array<ArrayBuffer>): Promise<Unpacked> {
  if (typeof DecompressionStream === "undefined") return { trouble: "browser" };
  try {
    const bytes = await through(body, new DecompressionStream("deflate-raw"));
    return bytes === undefined ? { trouble: "large" } : decoded(bytes);
  } catch {
    return { trouble: "damaged" };
  }
}

function decoded(bytes: Uint8Array): Unpacked {
  try {
    return { text: new TextDecoder("utf-8", { fatal: true }).decode(bytes) };
  } catch {
    return { trouble: "damaged" };
  }
}

/** All bytes of a stream behind a transformation; `undefined` when they are more than can be meant. */
async function through(
  bytes: Uint8Array<ArrayBuffer>,
  transform: CompressionStream | DecompressionStream,
): Promise<Uint8Array<ArrayBuffer> | undefined> {
  const reader = new Blob([bytes]).stream().pipeThrough(transform).getReader();
  const chunks: Uint8Array[] = [];
  let length = 0;
  for (let next = await reader.read(); !next.done; next = await reader.read()) {
    length += next.value.length;
    if (length > LARGEST_BYTES) {
      await reader.cancel();
      return undefined;
    }
    chunks.push(next.value);
  }
  const all = new Uint8Array(length);
  let at = 0;
  for (const chunk of chunks) {
    all.set(chunk, at);
    at += chunk.length;
  }
  return all;
}

/** Some browsers know streams of compression, but not the bare form. */
function canDeflate(): boolean {
  try {
    return new CompressionStream("deflate-raw") instanceof CompressionStream;
  } catch {
    return false;
  }
}

/** CRC-32 as in ISO 3309 and ITU-T V.42. */
export function checksum(bytes: Uint8Array): number {
  let rest = 0xffffffff;
  for (const byte of bytes) {
    rest ^= byte;
    for (let bit = 0; bit < 8; bit += 1) rest = (rest >>> 1) ^ (rest & 1 ? 0xedb88320 : 0);
  }
  return (rest ^ 0xffffffff) >>> 0;
}

/** base64url of RFC 4648, without padding. */
function toLetters(bytes: Uint8Array): string {
  const binary = Array.from(bytes, (byte) => String.fromCharCode(byte)).join("");
  return btoa(binary).replaceAll("+", "-").replaceAll("/", "_").replace(/=+$/, "");
}

/** `undefined` when a sign is missing at the end. */
function fromLetters(letters: string): Uint8Array<ArrayBuffer> | undefined {
  if (letters.length % 4 === 1) return undefined;
  const binary = atob(letters.replaceAll("-", "+").replaceAll("_", "/"));
  return Uint8Array.from(binary, (sign) => sign.charCodeAt(0));
}
