/** Absences of the daybook that are not over, as a tank file has them; beside those of its answers. */
import type { TankFile } from "../../tank-file/schema.ts";
import type { DaybookEntry } from "../kinds.ts";

export function absencesTold(
  document: TankFile,
  dated: readonly DaybookEntry[],
  today: string,
): TankFile["absences"] | undefined {
  const told = dated.flatMap((entry) => {
    if (entry.kind !== "absence" || entry.body.to <= today) return [];
    const { from, to, fed_by, every_days } = entry.body;
    return [{ from, to, fed_by, ...(every_days === null ? {} : { every_days }) }];
  });
  if (told.length === 0) return undefined;
  // An answer given over today's document has them already.
  const fresh = told.filter(
    ({ from, to }) => !document.absences?.some((one) => one.from === from && one.to === to),
  );
  return [...(document.absences ?? []), ...fresh];
}
