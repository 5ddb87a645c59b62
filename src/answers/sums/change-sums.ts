/** Sums of water changes and salt, and of setting up, in the order they are listed. */
import { HEATER } from "./heater.ts";
import { NEW_TANK } from "./new-tank.ts";
import { NITRATE_CHANGES } from "./nitrate-changes.ts";
import { REACH_VALUE } from "./reach-value.ts";
import { SALINITY_STEPS } from "./salinity-steps.ts";
import { SALT_MIX } from "./salt-mix.ts";
import type { Sum } from "./sum.ts";
import { TANK_VOLUME } from "./tank-volume.ts";
import { TOP_OFF } from "./top-off.ts";
import { WATER_CHANGE } from "./water-change.ts";

export const CHANGE_SUMS: readonly Sum[] = [
  WATER_CHANGE,
  REACH_VALUE,
  NITRATE_CHANGES,
  SALT_MIX,
  SALINITY_STEPS,
  TOP_OFF,
  TANK_VOLUME,
  NEW_TANK,
  HEATER,
];
