/** Wet hand of a tank: what was logged last stands first, with its unit and values near it. */
import { entryOfRow } from "../../contract/daybook/kinds.ts";
import { MEASURES } from "../../contract/daybook/read-reading.ts";
import { MEASURED, type Measured, type ReadingBody } from "../../contract/daybook/reading.ts";
import { decimalSign } from "../../contract/quantity/preferences.ts";
import { preferencesOf } from "../../contract/tank-file/preferences-of.ts";
import { GROWTHS, type Growth } from "../../engine/types/tank.ts";
import { type WetGrowth, type WetReading, wetHandPage } from "../../web/pages/wet-hand.tsx";
import type { LoadedTank, PageContext, PageReply, PageRequest, PageRoute } from "../route.ts";
import { onRecord } from "./entry-of.ts";
import { keptReadings } from "./kept-readings.ts";
import { ofTank } from "./of-tank.ts";
import { valuesOfReading } from "./reading-of.ts";
import { unitFirst } from "./readings.ts";

export const WET_HAND_ROUTES: readonly PageRoute[] = [
  { method: "GET", path: "/tanks/:tank/wet-hand", answer: ofTank(show) },
];

async function show(tank: LoadedTank, _request: PageRequest, context: PageContext): Promise<PageReply> {
  const page = wetHandPage({
    head: tank.head,
    readings: readingsOf(tank),
    growths: await growthsOf(tank, context),
    onRecord: onRecord(tank),
    decimal: signOf(tank),
  });
  return { kind: "page", page };
}

const signOf = ({ document }: LoadedTank): string => decimalSign(preferencesOf(document.preferences).locale);

/** In the order given, those named first to the front. */
function lastFirst<T>(all: readonly T[], used: readonly T[]): readonly T[] {
  return [...new Set([...used, ...all])];
}

function readingsOf(tank: LoadedTank): readonly WetReading[] {
  const kept = keptReadings(tank.readings);
  const latest = new Map<Measured, ReadingBody>();
  for (const { body } of kept) if (!latest.has(body.quantity)) latest.set(body.quantity, body);
  return lastFirst<Measured>(MEASURED, [...latest.keys()]).map((quantity): WetReading => {
    const body = latest.get(quantity);
    if (body === undefined) return { quantity, unit: unitFirst(quantity, tank), last: null, near: [] };
    const { text = "", unit = "" } = valuesOfReading(body, "");
    return {
      quantity,
      unit,
      last: body.text,
      near: nearTo(text, quantity, unit, body.kit_step, signOf(tank)),
    };
  });
}

/** A change worth a key of its own, in the first unit of each quantity. */
const STEPS: Readonly<Record<Measured, string>> = {
  salinity_psu: "0.2",
  temperature_c: "0.2",
  ph: "0.1",
  alkalinity_dkh: "0.3",
  no3_mg_per_l: "2",
  po4_mg_per_l: "0.02",
  tan_mg_n_per_l: "0.1",
  no2_mg_per_l: "0.05",
  calcium_mg_per_l: "10",
  magnesium_mg_per_l: "20",
};

/** Five values about the last one, a kit's step apart; none where the text is no plain figure or the unit another. */
function nearTo(
  text: string,
  quantity: Measured,
  unit: string,
  kitStep: string | null,
  decimal: string,
): readonly string[] {
  const value = /^\d+(?:[.,]\d+)?$/.test(text) ? Number(text.replace(",", ".")) : Number.NaN;
  const own = MEASURES[quantity].units[0] ?? "";
  if (Number.isNaN(value) || (unit !== own && kitStep === null)) return [];
  const stepText = kitStep ?? STEPS[quantity];
  const step = Number(stepText);
  if (!(step > 0)) return [];
  const digits = Math.max(decimalsIn(stepText), decimalsIn(text.replace(",", ".")));
  return [-2, -1, 0, 1, 2]
    .map((steps) => value + steps * step)
    .filter((near) => near >= 0)
    .map((near) => near.toFixed(digits).replace(".", decimal));
}

const decimalsIn = (text: string): number => (text.split(".")[1] ?? "").length;

const ENTRIES_LOOKED_AT = 60;

async function growthsOf({ row }: LoadedTank, { store }: PageContext): Promise<readonly WetGrowth[]> {
  const rows = await store.entries(row.id, { kind: "growth", limit: ENTRIES_LOOKED_AT });
  const latest = new Map<Growth, number>();
  for (const one of rows) {
    const entry = entryOfRow(one);
    if (entry?.kind !== "growth") continue;
    if (!latest.has(entry.body.growth)) latest.set(entry.body.growth, entry.body.score);
  }
  return lastFirst<Growth>(GROWTHS, [...latest.keys()]).map((growth) => ({
    growth,
    last: latest.get(growth) ?? null,
  }));
}
