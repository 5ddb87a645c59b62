/**
 * From the digits a keeper typed to the numbers they can mean. Never picks between two.
 * Takes any decimal digits of Unicode, comma or point, groups of three, and powers of ten.
 */

export type NumberRead =
  | { readonly kind: "one"; readonly value: number; readonly rewritten: boolean }
  /** Comma or point before exactly three digits: thousands or a decimal. */
  | { readonly kind: "two"; readonly values: readonly [number, number] }
  | { readonly kind: "none" };

/** Pattern of a number inside a longer text, after `asciiDigits`. */
export const NUMBER = String.raw`[+-]?(?:\d{1,3}(?:[ ']\d{3})+(?![\d ']*\d)(?:[.,]\d+)?|\d[\d.,]*|[.,]\d+)(?:e[+-]?\d{1,4})?`;

const NONE: NumberRead = { kind: "none" };

/** Digits of any script as 0 to 9. */
export function asciiDigits(text: string): string {
  return text.replace(/(?![0-9])\p{Nd}/gu, (digit) => String(digitValue(digit)));
}

// Every script's digits stand in a row of ten that begins at a multiple of ten from its zero:
// walk down to the zero of the row.
function digitValue(digit: string): number {
  const code = digit.codePointAt(0) ?? 0;
  let zero = code;
  while (code - zero < 9 && /^\p{Nd}$/u.test(String.fromCodePoint(zero - 1))) zero -= 1;
  return code - zero;
}

/** Reads one number token (see `NUMBER`). `decimal` is the sign the keeper's locale uses. */
export function readNumber(token: string, decimal: "." | ","): NumberRead {
  const match = /^([+-]?)([\d.,' ]+)(e[+-]?\d+)?$/.exec(token);
  if (match === null) return NONE;
  const [, sign = "", body = "", power = ""] = match;
  const plain = body.replace(/[' ]/g, "");
  const finish = (digits: string, rewritten: boolean): NumberRead => {
    const value = Number(`${sign}${digits}${power}`);
    if (!Number.isFinite(value)) return NONE;
    return { kind: "one", value: value + 0, rewritten: rewritten || power !== "" || plain !== body };
  };
  const points = plain.split(".").length - 1;
  const commas = plain.split(",").length - 1;
  if (points === 0 && commas === 0) return finish(plain, false);
  if (points > 0 && commas > 0) {
    const last = plain.lastIndexOf(".") > plain.lastIndexOf(",") ? "." : ",";
    const group = last === "." ? "," : ".";
    const [whole = "", fraction = "", ...more] = plain.split(last);
    if (more.length > 0 || !isGrouped(whole, group)) return NONE;
    return finish(`${whole.split(group).join("")}.${fraction}`, true);
  }
  const sep = points > 0 ? "." : ",";
  if (points + commas > 1) {
    return isGrouped(plain, sep) ? finish(plain.split(sep).join(""), true) : NONE;
  }
  const asDecimal = plain.replace(sep, ".");
  if (!/\d/.test(asDecimal)) return NONE;
  if (sep !== decimal && /^[1-9]\d{0,2}[.,]\d{3}$/.test(plain)) {
    const thousands = Number(`${sign}${plain.replace(sep, "")}${power}`);
    const fraction = Number(`${sign}${asDecimal}${power}`);
    return Number.isFinite(thousands) && Number.isFinite(fraction)
      ? { kind: "two", values: [thousands, fraction] }
      : NONE;
  }
  return finish(asDecimal, sep !== "." || sep !== decimal);
}

function isGrouped(digits: string, group: string): boolean {
  const [first = "", ...rest] = digits.split(group);
  return /^\d{1,3}$/.test(first) && rest.length > 0 && rest.every((part) => /^\d{3}$/.test(part));
}
