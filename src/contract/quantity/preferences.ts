/** How one keeper writes numbers, dates and units. Null where nobody said: then the reader asks. */
export interface Preferences {
  /** BCP 47 tag; decides which of comma and point is the decimal sign. */
  readonly locale: string;
  readonly gallon: "us" | "imperial" | null;
  readonly length: "cm" | "in" | null;
  readonly dateOrder: "dmy" | "mdy" | null;
}

export const NO_PREFERENCES: Preferences = { locale: "en", gallon: null, length: null, dateOrder: null };

/** Asking the platform costs more than reading a number: each locale is asked about once. */
const signs = new Map<string, "." | ",">();

/** The decimal sign of a locale; a point where the tag means nothing here. */
export function decimalSign(locale: string): "." | "," {
  const known = signs.get(locale);
  if (known !== undefined) return known;
  const sign = askSign(locale);
  // Any text can stand in a file's locale; a thousand different ones are no keeper's.
  if (signs.size < 1000) signs.set(locale, sign);
  return sign;
}

function askSign(locale: string): "." | "," {
  try {
    const parts = new Intl.NumberFormat(locale).formatToParts(1.5);
    return parts.some((part) => part.type === "decimal" && part.value === ",") ? "," : ".";
  } catch {
    return ".";
  }
}
