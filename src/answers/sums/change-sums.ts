/** Sums of water changes and salt, and of setting up, in the order they are listed. */
import { NITRATE_CHANGES } from "./nitrate-changes.ts";
import { REACH_VALUE } from "./reach-value.ts";
import { SALT_MIX } from "./salt-mix.ts";
import type { Sum } from "./sum.ts";
import { WATER_CHANGE } from "./water-change.ts";

export const CHANGE_SUMS: readonly Sum[] = [WATER_CHANGE, REACH_VALUE, NITRATE_CHANGES, SALT_MIX];
