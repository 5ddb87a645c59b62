/** What of a record can teach: quick, for who must ask by it. */
import { JUDGEMENT } from "../../engine/calibration/judgement.ts";
import { addDays } from "../../engine/stocking/suitability.ts";
import type { TankRecord } from "../../engine/types/record.ts";

/** The part of a record that teaches: what is older is left where it is. */
export function teachingPart(record: TankRecord): TankRecord {
  const since = addDays(record.asOf, -JUDGEMENT.longestWindowDays);
  const young = <Dated extends { readonly on: string }>(all: readonly Dated[]) =>
    all.filter(({ on }) => on >= since);
  return {
    observations: young(record.observations).filter(({ kind }) => kind !== "sign"),
    happenings: young(record.happenings),
    declined: [],
    asOf: record.asOf,
  };
}
