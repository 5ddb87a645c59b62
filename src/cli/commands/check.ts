/** `grazewell check`: reads a tank file as every other command would, and says what it made of it. */
import { Command } from "commander";
import { reportOf } from "../../answers/check/report.ts";
import { printCheck } from "../check/print.ts";
import { CliError, EXIT, type Io } from "../io.ts";
import { findingLines } from "../read-tank.ts";
import { addTankOptions, type TankSource, tankResultFrom } from "../tank-source.ts";

const EXAMPLES = `Examples:
  grazewell check examples/first-reef.yaml
  grazewell check tank.json --json
  cat tank.yaml | grazewell check -
`;

export function command(io: Io): Command {
  const check = new Command("check")
    .summary("what is wrong with a tank file, how it was read, what was assumed")
    .description(
      "Reads a tank file and says all that is wrong with it at once, how each entry was read, and what was assumed because nobody said. The file's form: docs/tank-file.md.",
    )
    .addHelpText("before", EXAMPLES)
    .argument("[file]", "tank file, YAML or JSON; - for standard input; or --tank")
    .option("--json", "data for programs: docs/schemas/check.schema.json")
    .addHelpText(
      "after",
      "\nEnds with 0 when the file can be used, 65 when something is to mend, 66 when it can't be read.",
    )
    .action(async (file: string | undefined, flags: TankSource & { readonly json?: true }) => {
      const { label, result } = await tankResultFrom(file, flags, io);
      const report = reportOf(label, result);
      if (flags.json === true) io.out(JSON.stringify(report, null, 2));
      else if (report.ok) printCheck(report, io);
      if (result.ok) return;
      const count = result.findings.length;
      const heading = `${count} ${count === 1 ? "thing" : "things"} to mend. Nothing was computed.`;
      throw new CliError(
        EXIT.badData,
        flags.json === true ? [] : [...findingLines(label, result.findings), heading],
      );
    });
  return addTankOptions(check);
}
