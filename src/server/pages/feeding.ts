/** Feeding of one tank: its own numbers at once, whom the larder can't feed when the plan is there. */
import { feedingOf } from "../../answers/feeding/feeding.ts";
import { animalById } from "../../catalogue/index.ts";
import { to } from "../../web/page.ts";
import { feedingPage, handFedPage } from "../../web/pages/feeding.tsx";
import type { PageRoute } from "../route.ts";
import { answersFor, ofTank } from "./of-tank.ts";

const foodOf = (id: string): string | null => animalById.get(id)?.supplementalFood ?? null;

export const FEEDING_ROUTES: readonly PageRoute[] = [
  {
    method: "GET",
    path: to.tank(":tank", "feeding"),
    answer: ofTank(async (loaded, request, context) => {
      const { head, facts } = loaded;
      const answers = await answersFor(loaded, request, context);
      const byHand = answers?.waves.fed_by_hand ?? null;
      if (request.query["part"] === "1" && byHand !== null)
        return { kind: "page", page: handFedPage({ head, byHand, foodOf }) };
      return { kind: "page", page: feedingPage({ head, feeding: feedingOf(facts), byHand, foodOf }) };
    }),
  },
];
