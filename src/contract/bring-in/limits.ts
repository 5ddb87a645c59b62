/** Bounds of a file that is brought in; docs/limits.md names them, and every message that refuses says its own. */
export const MOST_FILE_BYTES = 10 * 1024 * 1024;
export const MOST_FILE_ROWS = 100_000;
/** More columns than any sheet of readings has. */
export const MOST_FILE_COLUMNS = 300;

const MIB = 1024 * 1024;

export const tooManyBytes = (bytes: number): string =>
  `Files up to ${MOST_FILE_BYTES / MIB} MiB; this one has ${(bytes / MIB).toFixed(1)} MiB. Split it by year`;
export const tooManyRows = (): string =>
  `Files up to ${MOST_FILE_ROWS.toLocaleString("en-GB")} rows; this one has more. Split it by year`;
