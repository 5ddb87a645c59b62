/** Where the actions of advice lead, as addresses of one tank. */
import type { Leads } from "../../answers/advice.ts";
import { to } from "../page.ts";

type List = Extract<Leads, `wrong:${string}`>;

const ADDRESS: Readonly<Record<Exclude<Leads, List>, (tank: string) => string>> = {
  wrong: (tank) => to.wrong(tank),
  waves: (tank) => to.tank(tank, "waves"),
  readings: (tank) => to.tank(tank, "readings"),
  larder: (tank) => to.tank(tank, "larder"),
  ahead: (tank) => to.tank(tank, "ahead"),
  questions: (tank) => to.question(tank, 8),
  daybook: (tank) => to.tank(tank, "daybook"),
  trends: (tank) => to.tank(tank, "trends"),
  heads: (tank) => to.tank(tank, "heads"),
  growths: (tank) => to.tank(tank, "growths"),
  errands: (tank) => to.tank(tank, "errands"),
  learned: (tank) => to.learned(tank),
  "start-up": (tank) => to.tank(tank, "start-up"),
  arrivals: (tank) => to.tank(tank, "arrivals"),
  holiday: (tank) => to.holiday(tank),
};

const isList = (leads: Leads): leads is List => leads.startsWith("wrong:");

export const adviceAddress = (tank: string, leads: Leads): string =>
  isList(leads) ? to.wrongList(leads.slice("wrong:".length), tank) : ADDRESS[leads](tank);
