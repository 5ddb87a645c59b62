/** How long ago, in words. */
import { counted } from "../../answers/words.ts";

const MINUTE_MS = 60_000;

export function agoWords(at: string, now: string): string {
  const minutes = Math.max(0, Math.round((Date.parse(now) - Date.parse(at)) / MINUTE_MS));
  if (minutes < 1) return "less than a minute ago";
  if (minutes < 120) return `${counted(minutes, "minute")} ago`;
  return `on ${at.slice(0, 10)}`;
}
