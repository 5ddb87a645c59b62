/** Days between ISO dates, for placing them on a line. Pure. */
const DAY_MS = 86_400_000;

export const dayOf = (iso: string): number => Math.round(Date.parse(`${iso}T00:00:00Z`) / DAY_MS);

const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/** "15 Jun", for an axis; whole dates stand in the sentence and the table. */
export function shortDate(iso: string): string {
  const [, month, day] = iso.split("-").map(Number) as [number, number, number];
  return `${day} ${MONTHS[month - 1]}`;
}

/** First days of the months between two dates, every so many months, the first one left out. */
export function monthStarts(from: string, to: string, every: number): string[] {
  const [year, month] = from.split("-").map(Number) as [number, number];
  const starts: string[] = [];
  for (let i = 1; i < 60; i += every) {
    const at = month - 1 + i;
    const iso = `${year + Math.floor(at / 12)}-${String((at % 12) + 1).padStart(2, "0")}-01`;
    if (iso > to) break;
    starts.push(iso);
  }
  return starts;
}
