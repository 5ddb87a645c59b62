/** Waves of one tank. */
import { to } from "../../web/page.ts";
import { wavesPage } from "../../web/pages/waves.tsx";
import type { PageRoute } from "../route.ts";
import { answeredPage } from "./answered.ts";

export const WAVES_ROUTES: readonly PageRoute[] = [
  answeredPage({
    path: "/tanks/:tank/waves",
    here: "waves",
    what: "Waves",
    address: (tank) => to.tank(tank, "waves"),
    draw: ({ loaded, answers, today }) => wavesPage({ head: loaded.head, answers, today }),
  }),
];
