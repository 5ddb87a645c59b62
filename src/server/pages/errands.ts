/** Errands of one tank. */
import { judgeGate } from "../../answers/bench/gate.ts";
import { errandsOf } from "../../answers/errands/errands.ts";
import { orderingOf, straysOf } from "../../answers/errands/ordering.ts";
import { animalById } from "../../catalogue/index.ts";
import { to } from "../../web/page.ts";
import { errandsPage } from "../../web/pages/errands.tsx";
import { knownTank } from "../round/known-tank.ts";
import type { PageRoute } from "../route.ts";
import { answeredPage } from "./answered.ts";

export const ERRANDS_ROUTES: readonly PageRoute[] = [
  answeredPage({
    path: "/tanks/:tank/errands",
    here: "errands",
    what: "Errands",
    address: (tank) => to.tank(tank, "errands"),
    draw: ({ loaded, answers, today }) => {
      const [next] = answers.waves.waves;
      return errandsPage({
        head: loaded.head,
        gate: next === undefined ? null : judgeGate(next, answers.waves, knownTank(loaded, today)),
        ordering: orderingOf(answers, loaded.record, loaded.facts.shop),
        strays: straysOf(answers, loaded.record),
        shop: loaded.facts.shop,
        errands: errandsOf(answers, (id) => animalById.get(id)?.supplementalFood ?? null),
      });
    },
  }),
];
