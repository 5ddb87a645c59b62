/** `grazewell water`: what the water is at an instant, from what a keeper reads off the instruments. */
import { Command, Option } from "commander";
import { GRAVITY_SCALES } from "../../engine/seawater/specific-gravity.ts";
import { OutOfRange } from "../../engine/units/range.ts";
import { CliError, EXIT, type Io } from "../io.ts";
import { waterOutput } from "../water/figures.ts";
import { printWater } from "../water/print.ts";
import { readWater } from "../water/read.ts";
import type { WaterFlags } from "../water/reading.ts";

const EXAMPLES = `Examples:
  grazewell water --salinity 35 --temperature 25
  grazewell water --salinity 35 --temperature 77F --ph 8.2 --tan "0.5 mg/L as N"
  grazewell water --specific-gravity 1.025 --sg-reference 20/20 --temperature 25
  grazewell water --specific-gravity 1.024 --sg-reference 60F/60F --hydrometer --temperature 26
  grazewell water --conductivity 53 --temperature 25 --altitude 1500 --json
`;

export function command(io: Io): Command {
  return new Command("water")
    .summary("what the water is: density, oxygen, ammonia")
    .description(
      "Density, specific gravity, conductivity, oxygen and un-ionised ammonia of seawater, each with its range and where it comes from. Values take a unit as typed: 77F, 1.025 sg, 53 mS/cm.",
    )
    .addHelpText("before", EXAMPLES)
    .option("--salinity <value>", "practical salinity; psu and ppt mean the same here")
    .option("--specific-gravity <value>", "what a refractometer or hydrometer shows")
    .addOption(
      new Option(
        "--sg-reference <scale>",
        "temperatures printed on the instrument, sample over pure water",
      ).choices(Object.keys(GRAVITY_SCALES)),
    )
    .option("--hydrometer", "it is a floating glass hydrometer, which does not correct for temperature")
    .option("--conductivity <value>", "what a conductivity meter shows, mS/cm unless said")
    .addOption(
      new Option(
        "--conductivity-at <what>",
        "25 when the meter says it corrects to 25 C, sample when it does not",
      ).choices(["25", "sample"]),
    )
    .option("--temperature <value>", "C unless said")
    .option("--ph <value>", "as read")
    .addOption(
      new Option(
        "--ph-scale <scale>",
        "nbs when the meter was set with ordinary buffers (taken when not said)",
      ).choices(["nbs", "total"]),
    )
    .option("--tan <value>", 'total ammonia with its unit: "0.5 mg/L as N", "0.5 NH3"')
    .option("--altitude <value>", "of the tank above the sea, m unless said")
    .option("--json", "data for programs: docs/schemas/water.schema.json")
    .action((flags: WaterFlags & { readonly json?: true }) => {
      const output = withinRange(() => waterOutput(readWater(flags)));
      if (flags.json === true) io.out(JSON.stringify(output, null, 2));
      else printWater(output, io);
    });
}

/** What the equations refuse is the person's to mend, not a fault of ours. */
function withinRange<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (error instanceof OutOfRange) throw new CliError(EXIT.badData, [error.message]);
    throw error;
  }
}
