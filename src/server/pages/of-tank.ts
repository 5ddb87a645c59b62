/** What every page of one tank begins with: the tank, or that there is none; and its answers, where they are there. */
import type { TankAnswers } from "../../answers/tank-answers.ts";
import type { LoadedTank, PageContext, PageReply, PageRequest, PageRoute } from "../route.ts";

export const NO_TANK: PageReply = { kind: "not_found", what: "tank of that address" };

type OfTank = (
  tank: LoadedTank,
  request: PageRequest,
  context: PageContext,
) => Promise<PageReply> | PageReply;

export function ofTank(answer: OfTank): PageRoute["answer"] {
  return async (request, context) => {
    const tank = await context.loadTank(request.params["tank"] ?? "");
    // The day is the tank's own: a page of a tank elsewhere speaks of the day there.
    return tank === null ? NO_TANK : await answer(tank, request, { ...context, today: tank.today });
  };
}

/** Null while they are being worked out and nobody said that they would wait. */
export async function answersFor(
  { facts, record }: LoadedTank,
  { query }: PageRequest,
  { answers }: PageContext,
): Promise<TankAnswers | null> {
  const waits = query["wait"] === "1" || query["part"] === "1";
  return (
    answers.ready(facts, undefined, record) ??
    (waits ? await answers.of(facts, undefined, undefined, record) : null)
  );
}
