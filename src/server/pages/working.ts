/** Working of one figure of a tank: as a page, or as a part that opens over another. */
import { workingOf } from "../../answers/working.ts";
import { to } from "../../web/page.ts";
import { workingPage } from "../../web/pages/working.tsx";
import type { PageRoute } from "../route.ts";
import { answeredPage } from "./answered.ts";

export const WORKING_ROUTES: readonly PageRoute[] = [
  answeredPage({
    path: "/tanks/:tank/working/:figure",
    here: null,
    what: "Working",
    address: (tank, { params }) => to.working(tank, params["figure"] ?? ""),
    draw: ({ loaded, answers, request }) => {
      const figure = workingOf(answers, request.params["figure"] ?? "");
      if (figure === null) return { kind: "not_found", what: "figure of that name in this tank" };
      return workingPage({ head: loaded.head, figure, asOf: answers.waves.tank.as_of });
    },
  }),
];
