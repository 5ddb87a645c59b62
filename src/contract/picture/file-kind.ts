/** What a file is by its first bytes: neither its name nor what a browser says of it counts. */
import { letters } from "./bytes.ts";
import type { PictureType } from "./picture.ts";

export type FileKind =
  | PictureType
  | "heic"
  | "avif"
  | "film"
  | "gif"
  | "tiff"
  | "bmp"
  | "pdf"
  | "text"
  | null;

const STARTS: readonly (readonly [start: string, kind: FileKind])[] = [
  ["\xff\xd8\xff", "image/jpeg"],
  ["\x89PNG\r\n\x1a\n", "image/png"],
  ["GIF8", "gif"],
  ["II*\0", "tiff"],
  ["MM\0*", "tiff"],
  ["BM", "bmp"],
  ["%PDF", "pdf"],
];
const HEIF = /^(?:hei|hev|mif1|msf1)/;
const MOST_LOOKED_AT = 256;

/** Null where it is none that is known here. */
export function fileKind(bytes: Uint8Array): FileKind {
  for (const [start, kind] of STARTS) if (letters(bytes, 0, start.length) === start) return kind;
  if (letters(bytes, 0, 4) === "RIFF") return letters(bytes, 8, 4) === "WEBP" ? "image/webp" : "film";
  if (letters(bytes, 4, 4) === "ftyp") {
    const brand = letters(bytes, 8, 4);
    if (HEIF.test(brand)) return "heic";
    return brand.startsWith("avi") ? "avif" : "film";
  }
  // Text: HTML and SVG among it, which could carry scripts.
  const start = bytes.subarray(0, MOST_LOOKED_AT);
  return start.length > 0 && start.every((byte) => byte >= 32 || (byte >= 9 && byte <= 13)) ? "text" : null;
}
