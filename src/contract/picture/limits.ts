/** Bounds of pictures that are kept with entries; docs/pictures.md and docs/limits.md tell them. */
import type { EntryKind } from "../daybook/kinds.ts";

const MIB = 1024 * 1024;

/** Of one picture as it is sent. */
export const MOST_PICTURE_BYTES = 10 * MIB;
/** Of one entry, those that stand. */
export const MOST_PICTURES = 4;
/** Of one side, and of both together: a small file can unfold to more than a phone can hold. */
export const MOST_SIDE_PIXELS = 16_384;
export const MOST_PIXELS = 100_000_000;
/** Of what a keeper says that it shows. */
export const MOST_PICTURE_WORDS = 200;

/** Kinds of entry that pictures are kept with: what came dead, and what was lost. */
export const PICTURED = ["addition", "loss"] as const satisfies readonly EntryKind[];
export const isPictured = (kind: string): kind is (typeof PICTURED)[number] =>
  PICTURED.some((one) => one === kind);
