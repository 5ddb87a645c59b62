/**
 * A tank's page that is drawn from its answers: sent at once, with a slot where they are still being worked out;
 * asked for as a part (the slot's own question), or with `wait=1` (without script), it waits for them.
 */
import type { TankAnswers } from "../../answers/tank-answers.ts";
import type { Page, TankPage } from "../../web/page.ts";
import { waitingPage } from "../../web/pages/waiting.tsx";
import type { LoadedTank, PageReply, PageRequest, PageRoute } from "../route.ts";
import { answersFor, ofTank } from "./of-tank.ts";

export interface Answered {
  readonly loaded: LoadedTank;
  readonly answers: TankAnswers;
  readonly request: PageRequest;
  readonly today: string;
}

interface AnsweredPage {
  readonly path: string;
  /** Marked in the tank's navigation. */
  readonly here: TankPage | null;
  /** What is said to be worked out meanwhile. */
  readonly what: string;
  readonly address: (tank: string, request: PageRequest) => string;
  readonly draw: (answered: Answered) => Page | PageReply;
}

export function answeredPage({ path, here, what, address, draw }: AnsweredPage): PageRoute {
  return {
    method: "GET",
    path,
    answer: ofTank(async (loaded, request, context) => {
      const answers = await answersFor(loaded, request, context);
      if (answers === null) {
        const own = address(loaded.row.id, request);
        return { kind: "page", page: waitingPage({ head: loaded.head, here, what, address: own }) };
      }
      const drawn = draw({ loaded, answers, request, today: context.today });
      return "kind" in drawn ? drawn : { kind: "page", page: drawn };
    }),
  };
}

/** A tank's file of numbers is no page: it waits for the answers. */
export function answeredFile(path: string, draw: (answered: Answered) => PageReply): PageRoute {
  return {
    method: "GET",
    path,
    answer: ofTank(async (loaded, request, context) => {
      const answers = await context.answers.of(loaded.facts, undefined, undefined, loaded.record);
      return draw({ loaded, answers, request, today: context.today });
    }),
  };
}
