/** What both databases can keep alike: JSON as text, whole numbers, texts without a null character. */
import type { Json, Stamp } from "../store.ts";

export const json = (value: Json): string => JSON.stringify(value);
export const read = (text: string): Json => JSON.parse(text) as Json;
export const bit = (value: boolean): number => (value ? 1 : 0);

/** A caller's mistake throws here, before one database takes what the other refuses or changes. */
export function plain(what: string, text: string): string {
  if (/\0|\p{Surrogate}/u.test(text)) {
    throw new TypeError(`Cannot store ${what}: a null character or half a surrogate pair stands in it`);
  }
  return text;
}

/** What every version carries, of tanks and of entries. */
export const versionColumns = (stamp: Stamp, kept: boolean) => ({
  saved_at: stamp.at,
  saved_by: stamp.by,
  kept: bit(kept),
});

/** A version that can be one: others name nothing that is kept. */
export const isVersion = (from: number): boolean => Number.isInteger(from) && from >= 1 && from < 2 ** 31 - 1;
