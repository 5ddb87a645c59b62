/** Weeks 1 to 26 of one tank: its plan and weeks ahead, and the almanac's dated care. */
import { weeksOf } from "../../answers/weeks/weeks.ts";
import { to } from "../../web/page.ts";
import { weeksPage } from "../../web/pages/weeks.tsx";
import { almanacFor } from "../almanac/almanac-of.ts";
import type { PageRoute } from "../route.ts";
import { answeredPage } from "./answered.ts";

export const WEEKS_ROUTES: readonly PageRoute[] = [
  answeredPage({
    path: "/tanks/:tank/weeks",
    here: "weeks",
    what: "Weeks",
    address: (tank) => to.tank(tank, "weeks"),
    draw: ({ loaded, answers, today }) =>
      weeksPage({ head: loaded.head, weeks: weeksOf(answers, almanacFor(loaded, answers, today).dates) }),
  }),
];
