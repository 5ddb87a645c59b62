/** Waves of one tank. */
import { fallowUntil } from "../../answers/arrivals/quarantine.ts";
import { judgeGate } from "../../answers/bench/gate.ts";
import { to } from "../../web/page.ts";
import { wavesPage } from "../../web/pages/waves.tsx";
import { knownTank } from "../round/known-tank.ts";
import type { PageRoute } from "../route.ts";
import { answeredPage } from "./answered.ts";

export const WAVES_ROUTES: readonly PageRoute[] = [
  answeredPage({
    path: "/tanks/:tank/waves",
    here: "waves",
    what: "Waves",
    address: (tank) => to.tank(tank, "waves"),
    draw: ({ loaded, answers, today }) => {
      const [next] = answers.waves.waves;
      const gate = next === undefined ? null : judgeGate(next, answers.waves, knownTank(loaded, today));
      return wavesPage({ head: loaded.head, answers, today, gate, fallowUntil: fallowUntil(loaded.record) });
    },
  }),
];
