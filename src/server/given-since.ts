/**
 * When each part of a tank's answers was given: with the first version of those that have said it since as the latest
 * does. Answers that were put back (undone, restored) hold from the day they were given first, so that what was logged
 * since stands again; but for what is told in a few words, where the same words twice are two answers.
 */
import { PARTS, type Part, type Since } from "../contract/daybook/apply/scene.ts";
import type { TankFile } from "../contract/tank-file/schema.ts";
import type { TankRow } from "../store/store.ts";

const FEW_WORDS: readonly Part[] = ["sightings", "medicines"];

/** `history`: every version, oldest first. A file that says the day it speaks of was given on that day. */
export function givenSince(history: readonly TankRow[]): Since {
  const latest = history.at(-1);
  if (latest === undefined) return {};
  const file = latest.facts as unknown as TankFile;
  const told = /^\d{4}-\d\d-\d\d$/.test(file.as_of ?? "") ? file.as_of : undefined;
  if (told !== undefined) return Object.fromEntries(PARTS.map((part) => [part, { on: told, atMs: null }]));
  const whole = JSON.stringify(latest.facts);
  const first = history.findIndex(({ facts }) => JSON.stringify(facts) === whole);
  return Object.fromEntries(
    PARTS.map((part) => {
      const versions = FEW_WORDS.includes(part) ? history : history.slice(0, first + 1);
      const { stamp } = firstAlike(versions, part) ?? latest;
      return [part, { on: localDay(stamp.at), atMs: Date.parse(stamp.at) }];
    }),
  );
}

/** The earliest of the last versions that say a part alike. */
function firstAlike(versions: readonly TankRow[], part: Part): TankRow | undefined {
  const now = JSON.stringify(versions.at(-1)?.facts[part]);
  const other = versions.findLastIndex(({ facts }) => JSON.stringify(facts[part]) !== now);
  return versions[other + 1];
}

/** The day of an instant in the machine's zone, as "today" is. */
function localDay(at: string): string {
  const time = new Date(at);
  const two = (value: number) => String(value).padStart(2, "0");
  return `${time.getFullYear()}-${two(time.getMonth() + 1)}-${two(time.getDate())}`;
}
