/** Dated care as `almanac --json` prints it. */
import type { AlmanacOutput, CareDateOutput } from "../../contract/output/almanac.ts";
import { plain } from "../sentence.ts";
import { STATEMENT } from "../statement.ts";
import { ENGINE_VERSION } from "../version.ts";
import type { Almanac } from "./almanac.ts";
import type { CareDate } from "./care-date.ts";

export const almanacOutputOf = (
  tank: { readonly name: string; readonly zone: string | null },
  { today, dates, undated, benchFirst }: Almanac,
): AlmanacOutput => ({
  ...{ schema: "grazewell.almanac/1", engine: ENGINE_VERSION, bench_first: benchFirst },
  tank: { name: tank.name, as_of: today, zone: tank.zone },
  dates: dates.map(careDateOutputOf),
  undated: undated.map(({ id, what, why }) => ({ id, what, why: plain(why) })),
  statement: STATEMENT,
});

export const careDateOutputOf = (one: CareDate): CareDateOutput => ({
  ...{ id: one.id, kind: one.kind, on: one.on, at: one.at, every_days: one.every, until: one.until },
  only_if: one.gate === null ? null : plain(one.gate),
  ...{ do: plain(one.do), why: one.why.map(plain), by_when: plain(one.byWhen) },
  would_change: plain(one.wouldChange),
  log_as: one.done === null ? null : { kind: one.done.kind, fields: { ...one.done.fields } },
});
