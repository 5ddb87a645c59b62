/**
 * Ids that sort by when they were made, version 7 of RFC 9562: milliseconds first, then chance. Entries of one day are
 * kept in the order of their ids, so what was logged later stands later.
 */
import { randomBytes } from "node:crypto";

let last = 0;

/** `atMs`: now. Two of one millisecond, or after the clock was put back, still sort as they were made. */
export function newId(atMs: number = Date.now()): string {
  last = Math.max(atMs, last + 1);
  const bytes = randomBytes(16);
  bytes.writeUIntBE(last, 0, 6);
  bytes[6] = 0x70 | (bytes[6]! & 0x0f);
  bytes[8] = 0x80 | (bytes[8]! & 0x3f);
  const hex = bytes.toString("hex");
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join("-");
}
