/**
 * A JPEG file with its image alone. What is kept is named; all else goes, known or not: Exif, XMP, IPTC, comments, colour
 * profiles, makers' blocks, previews, and whatever hangs behind the end (second pictures and films do). Kept as they are:
 * frame, tables, scans with their bytes, how colours are coded. Which way up is written anew (orientation.ts).
 * ITU-T T.81 annex B. Limits: what browsers show, sequential and progressive with Huffman tables of 8 bits.
 */
import { asBytes, joined, letters, u16 } from "./bytes.ts";
import { orientationIn, shownAs, tiffWith } from "./orientation.ts";
import type { Stripped } from "./picture.ts";

const SOI = 0xd8;
const EOI = 0xd9;
const SOS = 0xda;
const APP0 = 0xe0;
const APP1 = 0xe1;
const APP14 = 0xee;
/** Baseline, extended and progressive. */
const FRAMES: ReadonlySet<number> = new Set([0xc0, 0xc1, 0xc2]);
/** Frames of other codings: lossless, hierarchical, arithmetic. */
const OTHER_FRAMES: ReadonlySet<number> = new Set([
  ...[0xc3, 0xc5, 0xc6, 0xc7, 0xc9, 0xca, 0xcb, 0xcd, 0xce, 0xcf],
]);
/** Huffman tables, quantisation tables, restart interval. */
const TABLES: ReadonlySet<number> = new Set([0xc4, 0xdb, 0xdd]);
const LOOSE: ReadonlySet<number> = new Set([0x01, 0xd0, 0xd1, 0xd2, 0xd3, 0xd4, 0xd5, 0xd6, 0xd7]);
const EXIF = "Exif\0\0";

export function stripJpeg(bytes: Uint8Array): Stripped {
  const kept: Uint8Array[] = [];
  let colours: Uint8Array | null = null;
  let density: Uint8Array | null = null;
  let orientation = 1;
  let size: { readonly width: number; readonly height: number } | null = null;
  let scans = 0;
  let at = 2;
  for (;;) {
    const marker = markerAt(bytes, at);
    if (marker === null) return { why: at >= bytes.length ? "cut_short" : "not_built_so" };
    at = marker.end;
    if (marker.code === EOI) break;
    if (marker.code === SOI) return { why: "not_built_so" };
    if (LOOSE.has(marker.code)) continue;
    const length = u16(bytes, at);
    if (at + length > bytes.length) return { why: "cut_short" };
    if (length < 2) return { why: "not_built_so" };
    const body = bytes.subarray(at + 2, at + length);
    at += length;
    if (OTHER_FRAMES.has(marker.code)) return { why: "not_shown" };
    if (FRAMES.has(marker.code)) {
      if (size !== null || body.length < 6) return { why: "not_built_so" };
      if (body[0] !== 8) return { why: "not_shown" };
      size = { width: u16(body, 3), height: u16(body, 1) };
    }
    if (FRAMES.has(marker.code) || TABLES.has(marker.code)) kept.push(segment(marker.code, body));
    else if (marker.code === SOS) {
      if (size === null) return { why: "not_built_so" };
      const end = scanEnd(bytes, at);
      kept.push(segment(SOS, body), bytes.subarray(at, end));
      at = end;
      scans += 1;
    } else if (marker.code === APP0 && letters(body, 0, 5) === "JFIF\0" && body.length >= 14) {
      // The two last bytes are the size of a preview: none is kept.
      density ??= joined([body.subarray(0, 12), Uint8Array.of(0, 0)]);
    } else if (marker.code === APP14 && letters(body, 0, 5) === "Adobe" && body.length >= 12) {
      colours ??= body.subarray(0, 12);
    } else if (marker.code === APP1 && letters(body, 0, 6) === EXIF && orientation === 1) {
      orientation = orientationIn(body.subarray(6));
    }
  }
  if (size === null || scans === 0) return { why: "not_built_so" };
  const head = [Uint8Array.of(0xff, SOI)];
  if (density !== null) head.push(segment(APP0, density));
  if (orientation !== 1) head.push(segment(APP1, joined([asBytes(EXIF), tiffWith(orientation)])));
  if (colours !== null) head.push(segment(APP14, colours));
  return {
    type: "image/jpeg",
    ...shownAs(size.width, size.height, orientation),
    bytes: joined([...head, ...kept, Uint8Array.of(0xff, EOI)]),
  };
}

/** The marker at a place, after any bytes of filling; null where none stands there. */
function markerAt(bytes: Uint8Array, from: number): { readonly code: number; readonly end: number } | null {
  if (bytes[from] !== 0xff) return null;
  let at = from + 1;
  while (bytes[at] === 0xff) at += 1;
  const code = bytes[at];
  return code === undefined || code === 0 ? null : { code, end: at + 1 };
}

/** Behind the coded bytes of a scan: the next marker that is neither a stuffed byte nor a restart. */
function scanEnd(bytes: Uint8Array, from: number): number {
  let at = from;
  for (;;) {
    at = bytes.indexOf(0xff, at);
    if (at < 0) return bytes.length;
    const next = bytes[at + 1];
    if (next === undefined) return bytes.length;
    if (next === 0 || (next >= 0xd0 && next <= 0xd7)) at += 2;
    else if (next === 0xff) at += 1;
    else return at;
  }
}

function segment(code: number, body: Uint8Array): Uint8Array<ArrayBuffer> {
  const length = body.length + 2;
  return joined([Uint8Array.of(0xff, code, length >> 8, length & 255), body]);
}
