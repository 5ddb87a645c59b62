/**
 * How soon something is to be looked at: always word, shape and colour together, never one alone.
 * The shape is drawn with attributes, so it prints and survives forced colours.
 */
import type { ComponentChildren } from "preact";

export const URGENCIES = ["today", "this_week", "next_visit", "cannot_tell"] as const;
export type UrgencyLevel = (typeof URGENCIES)[number];

const WORDS: Readonly<Record<UrgencyLevel, string>> = {
  today: "Today",
  this_week: "This week",
  next_visit: "Next visit",
  cannot_tell: "Can't tell yet",
};

interface UrgencyProps {
  readonly level: UrgencyLevel;
  /** Instead of the level's own word, where a sentence needs another: "Today, before noon". */
  readonly children?: ComponentChildren;
}

export function Urgency({ level, children }: UrgencyProps) {
  return (
    <span class={`urgency ${level.replace("_", "-")}`}>
      <svg class="urgency-shape" viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
        <Shape level={level} />
      </svg>
      <span>{children ?? WORDS[level]}</span>
    </span>
  );
}

function Shape({ level }: { readonly level: UrgencyLevel }) {
  if (level === "today") return <rect class="solid" x="2" y="2" width="12" height="12" />;
  if (level === "this_week") return <path class="solid" d="M8 1.5 15 14.5H1Z" />;
  return (
    <circle
      class="hollow"
      cx="8"
      cy="8"
      r="5.75"
      stroke-dasharray={level === "cannot_tell" ? "3.2 2.8" : undefined}
    />
  );
}
