/**
 * Something that has to be known here: how an entry was read, what is unusual, what can hurt. Plain words.
 * The kind is told by its first word as well as by its rule and colour.
 */
import type { ComponentChildren } from "preact";

export type NoticeKind = "note" | "look" | "danger" | "done";

const FIRST_WORD: Readonly<Record<NoticeKind, string>> = {
  note: "Note",
  look: "Look at this",
  danger: "Danger",
  done: "Done",
};

interface NoticeProps {
  readonly kind: NoticeKind;
  /** Instead of the kind's first word. */
  readonly title?: string;
  readonly children: ComponentChildren;
}

export function Notice({ kind, title, children }: NoticeProps) {
  return (
    <div class={`notice of-${kind}`} role={kind === "done" ? "status" : undefined}>
      <p class="notice-title">{title ?? FIRST_WORD[kind]}</p>
      <div>{children}</div>
    </div>
  );
}
