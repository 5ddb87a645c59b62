/** What the daybook has taught of one tank. */
import { to } from "../../web/page.ts";
import { learnedPage } from "../../web/pages/learned.tsx";
import type { PageRoute } from "../route.ts";
import { answeredPage } from "./answered.ts";

export const LEARNED_ROUTES: readonly PageRoute[] = [
  answeredPage({
    path: "/tanks/:tank/learned",
    here: "daybook",
    what: "What the daybook has taught",
    address: (tank) => to.learned(tank),
    draw: ({ loaded, answers }) => learnedPage({ head: loaded.head, learned: answers.learned ?? null }),
  }),
];
