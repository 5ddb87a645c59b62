/** A sent reading, read; and whether the tank with it can still be read as a whole. */
import type { FieldDoubt } from "../../answers/questions/doubts.ts";
import type { Values } from "../../answers/questions/prefill.ts";
import { MEASURED_AS, shownIn, shownValue } from "../../answers/units-shown.ts";
import { MEASURES, type ReadReading, readReading } from "../../contract/daybook/read-reading.ts";
import type { ReadingBody } from "../../contract/daybook/reading.ts";
import { parseAmount } from "../../contract/quantity/parse.ts";
import { decimalSign } from "../../contract/quantity/preferences.ts";
import { spelled } from "../../contract/quantity/rule.ts";
import type { TankFile } from "../../contract/tank-file/schema.ts";
import type { EntryRow, Json } from "../../store/store.ts";
import type { ReadingLine } from "../../web/pages/readings.tsx";
import { readDocument, withReadings } from "../load-tank.ts";
import { readingContextOf } from "../reading-context.ts";
import type { LoadedTank, PageContext } from "../route.ts";
import { keptReadings } from "./kept-readings.ts";

type Kept = Extract<ReadReading, { readonly ok: true }>;
export type SentReading = Kept | { readonly ok: false; readonly doubts: readonly FieldDoubt[] };

/** @param entry the one that it corrects, which does not count beside itself */
export function readSent(
  sent: Values,
  quantity: string,
  tank: LoadedTank,
  context: PageContext,
  entry: string | null = null,
): SentReading {
  const typed = {
    quantity,
    text: sent["text"] ?? "",
    unit: sent["unit"] ?? "",
    kit_step: sent["kit_step"] ?? "",
    observed: sent["observed"] ?? "",
    note: sent["note"] ?? "",
  };
  const read = readReading(typed, readingContextOf(tank, context));
  if (!read.ok) return { ok: false, doubts: read.doubts.map(asFieldDoubt) };
  const doubts = together(tank, { on: read.on, body: read.body as Json, id: entry ?? "" }, context.today);
  return doubts.length === 0 ? read : { ok: false, doubts };
}

/** What the tank's reader finds in the whole, with this reading in it. */
export function together(
  { document, readings }: LoadedTank,
  reading: Pick<EntryRow, "id" | "on" | "body">,
  today: string,
): readonly FieldDoubt[] {
  const others = readings.filter(({ id }) => id !== reading.id);
  const result = readDocument(withReadings(document, [reading as EntryRow, ...others]), today);
  if (result.ok) return [];
  return result.findings.map(({ path, message }) => ({
    field: path.endsWith(".on") ? "observed" : path.includes("kit_steps") ? "kit_step" : "text",
    text: message.text,
    choices: [],
  }));
}

function asFieldDoubt({
  field,
  message,
  choices,
}: Extract<ReadReading, { readonly ok: false }>["doubts"][number]): FieldDoubt {
  return {
    field,
    text: message.text,
    choices: choices.flatMap(({ label, text }) => (text === null ? [] : [{ label, text }])),
  };
}

/** As the form shows a kept reading, ready to be corrected. */
export function valuesOfReading({ quantity, text, kit_step, note }: ReadingBody, on: string): Values {
  const { units } = MEASURES[quantity];
  const unit = units.find((one) => text.endsWith(` ${one}`));
  return {
    text: unit === undefined ? text : text.slice(0, -unit.length).trim(),
    unit: unit ?? (/\p{L}|%/u.test(text) ? (units[0] ?? "") : ""),
    observed: on,
    kit_step: kit_step ?? "",
    note: note ?? "",
  };
}

export function lineOf(row: EntryRow, document: TankFile): ReadingLine | null {
  const [kept] = keptReadings([row]);
  if (kept === undefined) return null;
  const { id, version, on } = row;
  return { id, version, on, kept: row.kept, body: kept.body, shown: shownOf(kept.body, document) };
}

/** Null where what was typed is already in the keeper's unit, or says less than a figure. */
function shownOf({ quantity, text, value, censored }: ReadingBody, { preferences }: TankFile): string | null {
  const as = MEASURED_AS[quantity];
  if (as === undefined || censored !== null) return null;
  const shown = shownValue(as, value.central, shownIn(preferences));
  const unit = parseAmount(text, decimalSign(preferences?.locale ?? "en"))?.unit ?? "";
  const plainUnit = (words: string) => spelled(words).replace(/^mg\/l|^[\d.]+/g, "");
  return unit === "" || plainUnit(shown.replace(/^[\d.]+ /, "")) === plainUnit(unit) ? null : shown;
}
