/** Numbers of trends as a person reads them: values as fine as the test's step, slopes in two figures. */

/** Decimals of the test's step: 0.1 has one, 0.25 two, 2 none. */
function decimalsOf(step: number): number {
  for (const digits of [0, 1, 2])
    if (Math.abs(step * 10 ** digits - Math.round(step * 10 ** digits)) < 1e-6) return digits;
  return 3;
}

export const valueText = (value: number, step: number): string =>
  String(Number(value.toFixed(decimalsOf(step))));

/** Between readings a line is known a little finer than one. */
export const lineText = (value: number, step: number): string =>
  String(Number(value.toFixed(Math.min(3, decimalsOf(step) + (step >= 1 ? 0 : 1)))));

export function two(value: number): string {
  if (value === 0) return "0";
  const rounded = Number(value.toPrecision(2));
  return Math.abs(rounded) < 1e-4 ? "0" : String(rounded);
}

export const withUnit = (text: string, unit: string): string => (unit === "" ? text : `${text} ${unit}`);
