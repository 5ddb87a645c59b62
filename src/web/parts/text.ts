/**
 * How the page writes what the engine and keepers write in plain letters: units with their signs, numbers that stay with
 * their unit at a line's end, first letters, lists. For what is shown; what is typed into a field is never touched. Pure.
 */

const RAISED: Readonly<Record<string, string>> = { "-": "⁻", "1": "¹", "2": "²", "3": "³" };
const raised = (power: string): string => [...power].map((sign) => RAISED[sign] ?? sign).join("");

/** "90 umol m-2 s-1 at 25.4 C" as "90 µmol m⁻² s⁻¹ at 25.4 °C". */
export const unitSigns = (text: string): string =>
  text
    .replaceAll(/\bu(?=(?:mol|g)\b)/g, "µ")
    // A length's second or third power, or whatever is divided by: "m2", "cm2", "m-2", "s-1".
    .replaceAll(
      /\b(?:(c?m|mm)([23])|(c?m|mm|s|h|d|L|kg|g)(-[123]))(?![\w-])/g,
      (_, length: string | undefined, power: string | undefined, unit: string, under: string) =>
        length === undefined || power === undefined ? unit + raised(under) : length + raised(power),
    )
    // A carbon has its milligrams before it: a letter straight after a number is a temperature.
    .replaceAll(/(\d) ?([CF])(?![\p{L}\d:/°])/gu, "$1 °$2");

/** The same, each number bound to what follows it. */
export const unitText = (text: string): string =>
  unitSigns(text).replaceAll(/(\d) (?=(?!(?:to|or|and|if|in|on|at|by|for|from)\b)[\p{L}%°µ])/gu, "$1\u00a0");

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

export const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** "film on sand", "film on sand and carrion", "a, b and c" */
export function listed(names: readonly string[]): string {
  if (names.length < 2) return names.join("");
  return `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
}
