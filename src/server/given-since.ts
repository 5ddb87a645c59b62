/** When each part of a tank's answers was given: with the first version that says it as the latest does. */
import { PARTS, type Since } from "../contract/daybook/apply/scene.ts";
import type { TankFile } from "../contract/tank-file/schema.ts";
import type { TankRow } from "../store/store.ts";

/** `history`: every version, oldest first. A file that says the day it speaks of was given on that day. */
export function givenSince(history: readonly TankRow[]): Since {
  const latest = history.at(-1);
  if (latest === undefined) return {};
  const file = latest.facts as unknown as TankFile;
  const told = /^\d{4}-\d\d-\d\d$/.test(file.as_of ?? "") ? file.as_of : undefined;
  const entries = PARTS.map((part) => {
    if (told !== undefined) return [part, { on: told, atMs: null }] as const;
    const now = JSON.stringify(latest.facts[part]);
    let since = latest;
    for (const version of history.toReversed()) {
      if (JSON.stringify(version.facts[part]) !== now) break;
      since = version;
    }
    return [part, { on: localDay(since.stamp.at), atMs: Date.parse(since.stamp.at) }] as const;
  });
  return Object.fromEntries(entries);
}

/** The day of an instant in the machine's zone, as "today" is. */
function localDay(at: string): string {
  const time = new Date(at);
  const two = (value: number) => String(value).padStart(2, "0");
  return `${time.getFullYear()}-${two(time.getMonth() + 1)}-${two(time.getDate())}`;
}
