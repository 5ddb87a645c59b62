/**
 * Lines of a calendar file: texts escaped, long lines folded at 75 octets, CR LF at every end. RFC 5545, 3.1 and 3.3.11.
 * Why not a package: docs/decisions/0010-own-calendar-writer.md.
 */

const MOST_OCTETS = 75;

/** A property's text. Line breaks stay; other control characters and halves of pairs can't stand in a file, and go. */
export const calendarText = (text: string): string =>
  text
    .replaceAll(/\p{Surrogate}/gu, "")
    .replaceAll(/\r\n?/g, "\n")
    // biome-ignore lint/suspicious/noControlCharactersInRegex: those are what is taken out
    .replaceAll(/[\u0000-\u0009\u000b-\u001f\u007f]/g, " ")
    .replaceAll(/[\\;,]/g, (mark) => `\\${mark}`)
    .replaceAll("\n", "\\n");

/** A line cut into pieces of at most 75 octets, later ones begun by a space; no character is cut. */
export function folded(line: string): string {
  const encoder = new TextEncoder();
  const pieces: string[] = [];
  let piece = "";
  let octets = 0;
  for (const character of line) {
    const size = encoder.encode(character).length;
    if (octets + size > MOST_OCTETS) {
      pieces.push(piece);
      piece = " ";
      octets = 1;
    }
    piece += character;
    octets += size;
  }
  pieces.push(piece);
  return pieces.join("\r\n");
}

export const fileOf = (lines: readonly string[]): string =>
  lines.map((line) => `${folded(line)}\r\n`).join("");

/** `20261127` of an ISO date. */
export const asDate = (iso: string): string => iso.replaceAll("-", "");
/** `20261127T190000` of milliseconds of a calendar without zones. */
export const asLocal = (wall: number): string =>
  new Date(wall).toISOString().slice(0, 19).replaceAll(/[-:]/g, "");
/** `20261127T180000Z` of an instant. */
export const asInstant = (at: number): string => `${asLocal(at)}Z`;
