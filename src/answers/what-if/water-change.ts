/** `--water-change`: which share of the water, how often. */
import { tidy } from "../../contract/quantity/parse.ts";
import { readPlain } from "../../contract/quantity/plain.ts";
import { figure } from "../../contract/quantity/show.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { as, type Change, changed, setTo, taken, unread } from "./read.ts";

const FLAG = "--water-change";

export function changeWaterChange(text: string, facts: TankFacts): Change {
  const match = /^(.+?) (?:every|each) (.+)$/i.exec(tidy(text));
  if (match === null) {
    throw unread(FLAG, text, 'a share and how often are needed: write "20 % every 7 days"');
  }
  const notes: string[] = [];
  const [, share = "", often = ""] = match;
  const interval = /^week$/i.test(often) ? "7 days" : /^day$/i.test(often) ? "1 day" : often;
  const percent = taken(
    FLAG,
    readPlain("percent", share, as(FLAG, "%")),
    notes,
    (choice) => `${choice} every ${often}`,
  );
  const days = taken(
    FLAG,
    readPlain("days", interval, as(FLAG, "d")),
    notes,
    (choice) => `${share} every ${choice}`,
  );
  const changes = {
    waterChangeFraction: setTo(hundredths(percent)),
    waterChangeEveryDays: setTo(days),
  };
  return {
    facts: changed(facts, changes, Object.keys(changes)),
    events: [],
    words: `${figure(percent.central)} % of the water changed every ${figure(days.central)} days`,
    notes,
  };
}

const hundredths = ({ low, central, high }: Spread): Spread => ({
  low: low / 100,
  central: central / 100,
  high: high / 100,
});
