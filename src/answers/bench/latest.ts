/**
 * The latest of each quantity that was measured, from the daybook and from the answers to the questions, with its age
 * and what was said of it. Of one day, the entry kept later counts, and the daybook before the answers.
 */
import { MEASURES } from "../../contract/daybook/read-reading.ts";
import { MEASURED, type Measured, type ReadingBody } from "../../contract/daybook/reading.ts";
import { daysBetween } from "../../contract/quantity/calendar.ts";
import type { Notice } from "../../contract/tank-file/finding.ts";
import type { TankFile } from "../../contract/tank-file/schema.ts";
import { capital } from "../animals/fit-words.ts";

/** A reading of the daybook. */
export interface KeptReading {
  readonly id: string;
  /** ISO date. */
  readonly on: string;
  readonly body: ReadingBody;
}

export interface LatestReading {
  readonly quantity: Measured;
  readonly label: string;
  /** As typed. */
  readonly text: string;
  readonly on: string | null;
  /** Null where nobody said when. */
  readonly ageDays: number | null;
  readonly flag: ReadingBody["flag"];
  readonly said: string | null;
  /** Entry of the daybook; null where it was told in the questions. */
  readonly entry: string | null;
  /** How many of it there are. */
  readonly count: number;
}

/** `latestFirst`: readings of the daybook, the latest first. */
export function latestReadings(
  latestFirst: readonly KeptReading[],
  document: TankFile,
  notices: readonly Notice[],
  today: string,
): readonly LatestReading[] {
  return MEASURED.flatMap((quantity): LatestReading[] => {
    const kept = latestFirst
      .filter(({ body }) => body.quantity === quantity)
      .map(({ id, on, body }) => ({ on, text: body.text, flag: body.flag, said: body.said, entry: id }));
    const told = toldIn(document, quantity, notices);
    const [latest] = [...kept, ...told].sort((a, b) => laterFirst(a.on ?? "", b.on ?? ""));
    if (latest === undefined) return [];
    const { label } = MEASURES[quantity];
    const ageDays = latest.on === null ? null : Math.max(0, daysBetween(latest.on, today));
    return [{ quantity, label, ...latest, ageDays, count: kept.length + told.length }];
  });
}

/** ISO dates are in order as text. */
const laterFirst = (a: string, b: string): number => (a > b ? -1 : a < b ? 1 : 0);

/** What was said of a reading, without the label and the text that stand beside it anyway. */
export const saidOf = (said: string): string => capital(said.replace(/^[^"]*".*?": /, ""));

type Told = Pick<LatestReading, "on" | "text" | "flag" | "said" | "entry">;

function toldIn(document: TankFile, quantity: Measured, notices: readonly Notice[]): readonly Told[] {
  const judged = (path: string, text: unknown, on: string | null): readonly Told[] => {
    if (text === undefined) return [];
    const notice = notices.find((one) => one.path === path);
    const flag = notice?.kind === "DANGER" ? "danger" : notice?.kind === "UNUSUAL" ? "unusual" : null;
    return [
      { on, text: String(text), flag, said: flag === null ? null : (notice?.text ?? null), entry: null },
    ];
  };
  const alone = quantity === "temperature_c" || quantity === "salinity_psu" || quantity === "ph";
  return [
    ...(document.readings ?? []).flatMap((reading, i) =>
      judged(`readings[${i}].${quantity}`, reading[quantity], reading.on ?? null),
    ),
    ...(alone ? judged(quantity, document[quantity], document.as_of ?? null) : []),
  ];
}
