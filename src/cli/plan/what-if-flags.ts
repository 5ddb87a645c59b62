/** The flags of a what-if, which `ahead`, `waves` and `larder` share. */
import { type Command, Option } from "commander";

export function addWhatIfFlags(command: Command): Command {
  const many = (value: string, before: readonly string[] = []) => [...before, value];
  return command
    .optionsGroup("What if:")
    .option("--feed <change>", 'feed a day: "0.4 g/day", "+50 %", "x2"')
    .option("--light <change>", 'hours or dimmer: "10 h", "50 %"; dark days: "0 for 3 days"')
    .addOption(
      new Option(
        "--crew <change>",
        'animals: "+2 trochus-snail", "-3 blue-leg-hermit", "4 nerite-snail" (4 in all); may be repeated',
      ).argParser(many),
    )
    .option("--water-change <change>", '"20 % every 7 days"')
    .addOption(
      new Option(
        "--dead <what>",
        'a death not found: "5 g fish", "1 trochus-snail", "5 g fish on day 10"; may be repeated',
      ).argParser(many),
    )
    .optionsGroup("Options:");
}
