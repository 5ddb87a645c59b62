/** An instant with the offset of this device's clock: "2026-06-15T18:30:00+01:00". */
export function localInstant(at: Date): string {
  const minutes = -at.getTimezoneOffset();
  const local = new Date(at.getTime() + minutes * 60_000).toISOString().slice(0, 19);
  const two = (value: number) => String(Math.floor(value)).padStart(2, "0");
  const size = Math.abs(minutes);
  return `${local}${minutes < 0 ? "-" : "+"}${two(size / 60)}:${two(size % 60)}`;
}
