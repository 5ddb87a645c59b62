/** How a keeper's shop sells and sends: packs, least order, days from asking to coming, weather it holds back in. */
import type { ShopTerms } from "../../engine/types/tank.ts";
import { readCount } from "../quantity/count.ts";
import type { FindAnimal } from "../quantity/find-animal.ts";
import { readMeasure } from "../quantity/measure.ts";
import { convertible, readPlain } from "../quantity/plain.ts";
import { readSpecies } from "../quantity/species.ts";
import type { Entries } from "./entries.ts";
import type { Path } from "./finding.ts";
import type { TankFile } from "./schema.ts";

/** Of air on the way: not what animals bear, but what a shop may say. */
const OUTSIDE = convertible({
  ...{ label: "Outside", quantity: "temperature", unit: "C", example: "5 C" },
  hard: { min: -30, max: 50 },
});

export function readShop(file: TankFile, entries: Entries, find: FindAnimal): ShopTerms | undefined {
  const { shop } = file;
  if (shop === undefined) return undefined;
  const whole = (path: Path, value: string | number | undefined): number | null => {
    const read = entries.read(path, value, readCount);
    return read?.kind === "counted" && read.count > 0 ? read.count : null;
  };
  const outside = (name: "holds_below_c" | "holds_above_c"): number | null =>
    entries.read(["shop", name], shop[name], (text, c) => readMeasure(text, OUTSIDE, { ...c, unit: "C" }))
      ?.central ?? null;
  return {
    leadDays:
      entries.read(["shop", "lead_days"], shop.lead_days, (text, c) =>
        readPlain("days", text, { ...c, unit: "d" }),
      )?.central ?? null,
    leastHeads: whole(["shop", "least_heads"], shop.least_heads),
    packs: (shop.packs ?? []).flatMap(({ animal, heads }, i) => {
      const path: Path = ["shop", "packs", i];
      const species = entries.read([...path, "animal"], animal, (text, { label }) =>
        readSpecies(text, find, label),
      );
      const size = whole([...path, "heads"], heads);
      return species?.kind === "known" && size !== null ? [{ animal: species.animal.id, heads: size }] : [];
    }),
    holdsBelowC: outside("holds_below_c"),
    holdsAboveC: outside("holds_above_c"),
  };
}
