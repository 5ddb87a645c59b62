/** Bytes of a file read with bounds: past the end there is nothing, and nothing throws. */

export const u16 = (bytes: Uint8Array, at: number): number => ((bytes[at] ?? 0) << 8) | (bytes[at + 1] ?? 0);
export const u32 = (bytes: Uint8Array, at: number): number => u16(bytes, at) * 65_536 + u16(bytes, at + 2);
export const u16le = (bytes: Uint8Array, at: number): number =>
  (bytes[at] ?? 0) | ((bytes[at + 1] ?? 0) << 8);
export const u24le = (bytes: Uint8Array, at: number): number =>
  u16le(bytes, at) | ((bytes[at + 2] ?? 0) << 16);
export const u32le = (bytes: Uint8Array, at: number): number =>
  u16le(bytes, at) + u16le(bytes, at + 2) * 65_536;

/** Latin letters at a place: tags and names of chunks are such. */
export function letters(bytes: Uint8Array, at: number, count: number): string {
  return String.fromCharCode(...bytes.subarray(at, at + count));
}

export const asBytes = (text: string): Uint8Array => Uint8Array.from(text, (letter) => letter.charCodeAt(0));

export function joined(parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
