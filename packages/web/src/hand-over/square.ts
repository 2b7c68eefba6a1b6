// How much goes into a square of dots?

/**
 * Bytes that still make a square which phones read from paper and from a screen: version 27 of ISO/IEC 18004
 * at the lowest level of correction, 125 dots wide. More would be legal, but too fine for a poor camera.
 */
export const QR_MOST_BYTES = 1465;

export function bytesOf(text: string): number {
  return new TextEncoder().encode(text).length;
}

export function fitsSquare(text: string): boolean {
  return bytesOf(text) <= QR_MOST_BYTES;
}
