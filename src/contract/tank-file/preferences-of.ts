/** A file's own preferences over the reader's habits. What is only shown in a unit is no habit of reading. */
import { NO_PREFERENCES, type Preferences } from "../quantity/preferences.ts";
import type { TankFile } from "./schema.ts";

export function preferencesOf(
  stated: TankFile["preferences"],
  habits: Partial<Preferences> = {},
): Preferences {
  const { locale, gallon, length, dates } = stated ?? {};
  return {
    ...NO_PREFERENCES,
    ...habits,
    ...(locale === undefined ? {} : { locale }),
    ...(gallon === undefined ? {} : { gallon }),
    ...(length === undefined ? {} : { length }),
    ...(dates === undefined ? {} : { dateOrder: dates }),
  };
}
