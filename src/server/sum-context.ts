/** What a sum knows beside what is typed: the tank, how its keeper writes, the day. */
import type { SumContext } from "../answers/sums/given.ts";
import { NO_PREFERENCES } from "../contract/quantity/preferences.ts";
import { preferencesOf } from "../contract/tank-file/preferences-of.ts";
import type { LoadedTank } from "./route.ts";

export const sumContextOf = (tank: LoadedTank | null, today: string): SumContext =>
  tank === null
    ? { preferences: NO_PREFERENCES, today, tank: null }
    : {
        preferences: preferencesOf(tank.document.preferences),
        today,
        tank: { facts: tank.facts, record: tank.record, today },
      };
