/** Water sums over the API. */
import type { z } from "zod";
import { askSum } from "../../answers/sums/ask.ts";
import { sumOutputOf, sumsOutputOf } from "../../answers/sums/output.ts";
import { SUMS, sumOf } from "../../answers/sums/table.ts";
import { pointerOf } from "../../contract/http/json.ts";
import type { sumRequest } from "../../contract/http/sum-operations.ts";
import { sumContextOf } from "../sum-context.ts";
import { fault, type Handler, mend, notFound } from "./call.ts";

export const listSums: Handler = async () => ({ status: 200, body: sumsOutputOf(SUMS) });

export const workOutSum: Handler = async ({ params, body, context }) => {
  const sum = sumOf(params["sum"] ?? "");
  if (sum === null) throw notFound();
  const { given, tank: id } = body as z.infer<typeof sumRequest>;
  const tank = id === undefined ? null : await context.loadTank(id);
  if (id !== undefined && tank === null)
    throw mend(422, [{ ...fault("/tank", "NOTFOUND", "Tank: there is none of that id"), typed: id }]);
  const asked = askSum(sum, given, sumContextOf(tank, context.today));
  if (asked.ok) return { status: 200, body: sumOutputOf(sum, asked, context.today) };
  throw mend(
    422,
    asked.doubts.map(({ field, typed, message, choices }) => ({
      ...fault(pointerOf(["given", field]), message.kind, message.text),
      typed: typed === "" ? null : typed,
      choices,
    })),
  );
};
