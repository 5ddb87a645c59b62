/** Larder of one tank. */
import { fallowUntil } from "../../answers/arrivals/quarantine.ts";
import { to } from "../../web/page.ts";
import { larderPage } from "../../web/pages/larder.tsx";
import type { PageRoute } from "../route.ts";
import { answeredPage } from "./answered.ts";

export const LARDER_ROUTES: readonly PageRoute[] = [
  answeredPage({
    path: "/tanks/:tank/larder",
    here: "larder",
    what: "Larder",
    address: (tank) => to.tank(tank, "larder"),
    draw: ({ loaded, answers }) =>
      larderPage({ head: loaded.head, answers, fallowUntil: fallowUntil(loaded.record) }),
  }),
];
