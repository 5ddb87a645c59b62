/** `grazewell water` for people: what was read, then a figure a paragraph: value, range, how and by whose work. */
import type { WaterOutput } from "../../contract/output/water.ts";
import type { Io } from "../io.ts";
import { FIGURES, type FigureKey, type FigureRule } from "./rules.ts";

const AGAINST = { below: "below", either: "about at", above: "above" } as const;

export function printWater(output: WaterOutput, io: Io): void {
  io.out(io.bold(heading(output)));
  for (const key of Object.keys(FIGURES) as FigureKey[]) {
    const { label, unit, digits, how, sources, times = 1 }: FigureRule = FIGURES[key];
    const value = output[key];
    const band = output.bands[key];
    if (value === null || band === undefined) continue;
    const print = (figure: number) => (figure * times).toFixed(digits);
    const range = `${print(band.low)} to ${print(band.high)}${unit === "" ? "" : ` ${unit}`}`;
    io.out(`\n${label.padEnd(30)}${io.bold(print(value))}   ${range}`);
    for (const line of wrapped(`${how} (${sources.join(", ")})`, io.width - 2)) io.out(io.dim(`  ${line}`));
  }
  const { ammonia_limits: limits } = output;
  if (limits !== null) {
    const against = (span: string, limit: number, where: keyof typeof AGAINST) =>
      `${AGAINST[where]} ${limit.toFixed(3)}, the limit for ${span}`;
    const chronic = against("four days", limits.chronic_mg_n_per_l, limits.against_chronic);
    const acute = against("one hour", limits.acute_mg_n_per_l, limits.against_acute);
    for (const line of wrapped(`For animals of salt water: ${chronic}; ${acute} (epa-1989).`, io.width - 2)) {
      io.out(`  ${line}`);
    }
  }
  io.out("");
  for (const note of output.notes) for (const line of wrapped(note, io.width)) io.out(line);
}

function heading({ salinity_psu, temperature_c, ph, ph_scale, altitude_m }: WaterOutput): string {
  const parts = [`salinity ${short(salinity_psu)} psu`, `${short(temperature_c)} C`];
  if (ph !== null) parts.push(`pH ${short(ph)} (${ph_scale === "nbs" ? "NBS" : "total"} scale)`);
  if (altitude_m !== 0) parts.push(`${short(altitude_m)} m up`);
  return `Water of ${parts.join(", ")}`;
}

const short = (value: number): string => String(Number(value.toFixed(2)));

function wrapped(text: string, width: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(" ")) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= width)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
