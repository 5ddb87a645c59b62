/**
 * Which way up: the one thing of Exif that the image needs, as phones write pixels as the sensor lay. It is read out of
 * the block and written into a new one of 26 bytes that holds nothing else.
 */
import { asBytes, joined, letters, u16, u16le, u32, u32le } from "./bytes.ts";

const TAG = 0x0112;
const SHORT = 3;
const MOST_TAGS = 1_000;

/** 1 to 8 of a TIFF block; 1 (upright) where it says none that there is. */
export function orientationIn(tiff: Uint8Array): number {
  const order = letters(tiff, 0, 2);
  if (order !== "II" && order !== "MM") return 1;
  const [short, long] = order === "II" ? [u16le, u32le] : [u16, u32];
  if (short(tiff, 2) !== 42) return 1;
  const first = long(tiff, 4);
  const count = Math.min(short(tiff, first), MOST_TAGS);
  for (let i = 0; i < count; i += 1) {
    const at = first + 2 + 12 * i;
    if (at + 12 > tiff.length) return 1;
    if (short(tiff, at) !== TAG || short(tiff, at + 2) !== SHORT) continue;
    const value = short(tiff, at + 8);
    return value >= 1 && value <= 8 ? value : 1;
  }
  return 1;
}

/** A TIFF block with this one tag. */
export function tiffWith(orientation: number): Uint8Array<ArrayBuffer> {
  return joined([
    asBytes("MM\0\x2a\0\0\0\x08"),
    Uint8Array.of(0, 1, TAG >> 8, TAG & 255, 0, SHORT, 0, 0, 0, 1, 0, orientation, 0, 0),
    Uint8Array.of(0, 0, 0, 0),
  ]);
}

/** From 5 on the picture lies on its side. */
export const shownAs = (width: number, height: number, orientation: number) =>
  orientation >= 5 ? { width: height, height: width } : { width, height };
