/**
 * Habits of spreadsheets in a cell: the apostrophe that keeps a formula from running (an export writes it, an import
 * takes it off; every other text stays as typed), and names that were taken for dates.
 */

/** A cell that begins so would be reckoned with, or have its apostrophe taken off. */
const GUARDED = /^[=+\-@\t\r']/;
const GUARD = "'";

/** As a CSV cell holds a text; an empty text is told from no text. */
export const guarded = (text: string): string =>
  text === "" || GUARDED.test(text) ? `${GUARD}${text}` : text;

/** The text that a CSV cell holds. */
export const unguarded = (cell: string): string =>
  cell === GUARD || (cell.startsWith(GUARD) && GUARDED.test(cell.slice(1))) ? cell.slice(1) : cell;

const MONTH = "jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec|mrz|mai|okt|dez";
const DAY_MONTH = new RegExp(`^(?:\\d{1,4}[-. ](?:${MONTH})\\.?|(?:${MONTH})\\.?[- ]\\d{1,4})$`, "i");

/** "1-Mar" in a column of names: a spreadsheet took a name for a date. */
export const looksChanged = (cell: string): boolean => DAY_MONTH.test(cell.trim());

/** Only a dash, or the words for nothing: not measured. */
export const isNothing = (cell: string): boolean =>
  /^(?:[-–—]+|n\/?a|#n\/a|#wert!|#value!)?$/i.test(cell.trim());
