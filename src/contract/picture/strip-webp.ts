/**
 * A WebP file with its image alone: the coded image, its transparency, and a header written anew. Exif, XMP, colour
 * profiles and unknown chunks go; which way up is written anew. A moving one is none of ours. RFC 9649.
 */
import { asBytes, joined, letters, u16le, u24le, u32le } from "./bytes.ts";
import { orientationIn, shownAs, tiffWith } from "./orientation.ts";
import type { Stripped } from "./picture.ts";

const HEAD_BYTES = 12;
const MOVES = 0x02;
const HAS_EXIF = 0x08;
const HAS_ALPHA = 0x10;

export function stripWebp(bytes: Uint8Array): Stripped {
  const size = u32le(bytes, 4);
  if (size < 12) return { why: "not_built_so" };
  if (size + 8 > bytes.length) return { why: "cut_short" };
  const whole = bytes.subarray(0, size + 8);
  let [flags, orientation] = [0, 1];
  let [alpha, image]: [Uint8Array | null, Uint8Array | null] = [null, null];
  let [name, canvas]: [string, { width: number; height: number } | null] = ["", null];
  for (let at = HEAD_BYTES; at + 8 <= whole.length; ) {
    const chunk = letters(whole, at, 4);
    const length = u32le(whole, at + 4);
    if (at + 8 + length > whole.length) return { why: "cut_short" };
    const body = whole.subarray(at + 8, at + 8 + length);
    // Each begins at an even place.
    at += 8 + length + (length % 2);
    if (chunk === "ANIM" || chunk === "ANMF") return { why: "moving" };
    if (chunk === "VP8X") {
      if (body.length < 10) return { why: "not_built_so" };
      flags = body[0] ?? 0;
      if ((flags & MOVES) !== 0) return { why: "moving" };
      canvas = { width: u24le(body, 4) + 1, height: u24le(body, 7) + 1 };
    } else if (chunk === "ALPH") alpha ??= body;
    else if ((chunk === "VP8 " || chunk === "VP8L") && image === null) [name, image] = [chunk, body];
    else if (chunk === "EXIF") {
      // Some write the name of the block before it, as in a JPEG file.
      orientation = orientationIn(letters(body, 0, 6) === "Exif\0\0" ? body.subarray(6) : body);
    }
  }
  if (image === null) return { why: "not_built_so" };
  const own = name === "VP8L" ? losslessSize(image) : lossySize(image);
  // Of a still picture the canvas is the image's own size.
  if (own === null || (canvas !== null && (canvas.width !== own.width || canvas.height !== own.height))) {
    return { why: "not_built_so" };
  }
  // The simple form, where there is nothing to say beside the image.
  const simple = orientation === 1 && alpha === null && (canvas === null || name === "VP8 ");
  const head = new Uint8Array(10);
  head[0] = (flags & HAS_ALPHA) | (alpha === null ? 0 : HAS_ALPHA) | (orientation === 1 ? 0 : HAS_EXIF);
  put24(head, 4, own.width - 1);
  put24(head, 7, own.height - 1);
  const chunks = joined([
    asBytes("WEBP"),
    ...(simple ? [] : [chunkOf("VP8X", head)]),
    ...(alpha === null ? [] : [chunkOf("ALPH", alpha)]),
    chunkOf(name, image),
    ...(orientation === 1 ? [] : [chunkOf("EXIF", tiffWith(orientation))]),
  ]);
  return {
    type: "image/webp",
    ...shownAs(own.width, own.height, orientation),
    bytes: joined([asBytes("RIFF"), long(chunks.length), chunks]),
  };
}

/** Of the key frame's header. */
function lossySize(body: Uint8Array) {
  const started = body[3] === 0x9d && body[4] === 0x01 && body[5] === 0x2a;
  return started ? { width: u16le(body, 6) & 0x3fff, height: u16le(body, 8) & 0x3fff } : null;
}

function losslessSize(body: Uint8Array) {
  if (body[0] !== 0x2f || body.length < 5) return null;
  const bits = u32le(body, 1);
  return { width: (bits & 0x3fff) + 1, height: ((bits >>> 14) & 0x3fff) + 1 };
}

function put24(bytes: Uint8Array, at: number, value: number): void {
  bytes.set([value & 255, (value >> 8) & 255, (value >> 16) & 255], at);
}

const long = (value: number): Uint8Array =>
  Uint8Array.of(value & 255, (value >>> 8) & 255, (value >>> 16) & 255, value >>> 24);

const chunkOf = (name: string, body: Uint8Array): Uint8Array =>
  joined([asBytes(name), long(body.length), body, new Uint8Array(body.length % 2)]);
