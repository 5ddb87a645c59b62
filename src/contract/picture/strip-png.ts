/**
 * A PNG file with its image alone. Chunks that are kept are named: header, palette, image, transparency, and four that
 * say how colours are meant. Texts, times, Exif, colour profiles, the frames of a moving picture and what stands behind
 * the end go. Chunks are kept with their own check values, byte by byte. PNG third edition, sections 5 and 11.
 */
import { joined, letters, u32 } from "./bytes.ts";
import type { Stripped } from "./picture.ts";

const SIGNATURE_BYTES = 8;
/** Length, name and check value of a chunk. */
const AROUND_BYTES = 12;
const KEPT: ReadonlySet<string> = new Set([
  ...["IHDR", "PLTE", "IDAT", "IEND", "tRNS"],
  ...["gAMA", "cHRM", "sRGB", "sBIT"],
]);

export function stripPng(bytes: Uint8Array): Stripped {
  const kept: Uint8Array[] = [bytes.subarray(0, SIGNATURE_BYTES)];
  let size: { readonly width: number; readonly height: number } | null = null;
  let images = 0;
  for (let at = SIGNATURE_BYTES; ; ) {
    if (at + AROUND_BYTES > bytes.length) return { why: "cut_short" };
    const length = u32(bytes, at);
    const name = letters(bytes, at + 4, 4);
    const end = at + AROUND_BYTES + length;
    if (end > bytes.length) return { why: "cut_short" };
    if ((name === "IHDR") !== (size === null) || !/^[A-Za-z]{4}$/.test(name)) return { why: "not_built_so" };
    if (name === "IHDR") {
      if (length !== 13) return { why: "not_built_so" };
      size = { width: u32(bytes, at + 8), height: u32(bytes, at + 12) };
    }
    if (name === "IDAT") images += 1;
    if (KEPT.has(name)) kept.push(bytes.subarray(at, end));
    at = end;
    if (name === "IEND") break;
  }
  if (size === null || images === 0) return { why: "not_built_so" };
  return { type: "image/png", ...size, bytes: joined(kept) };
}
