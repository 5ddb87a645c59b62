/** Something is wrong: static, but for the way back to the tank that was left. It comes even where the tank can't be read. */

import { isCrisisId } from "../../answers/wrong/list-ids.ts";
import { oxygenPart } from "../../answers/wrong/numbers/oxygen.ts";
import { hasNumbers, needsEngine, numbersBehind } from "../../answers/wrong/numbers.ts";
import type { TankFile } from "../../contract/tank-file/schema.ts";
import { to } from "../../web/page.ts";
import { type FromTank, wrongListPage, wrongPage } from "../../web/pages/wrong.tsx";
import { wrongNumbersPage, wrongOxygenPage } from "../../web/pages/wrong-numbers.tsx";
import type { PageContext, PageRequest, PageRoute } from "../route.ts";
import { answersFor, ofTank } from "./of-tank.ts";

export const WRONG_ROUTES: readonly PageRoute[] = [
  {
    method: "GET",
    path: to.wrong(),
    answer: async (request, context) => ({
      kind: "page",
      page: wrongPage({ tank: await fromTank(request, context) }),
    }),
  },
  {
    method: "GET",
    path: to.wrongList(":list"),
    answer: async (request, context) => {
      const tank = await fromTank(request, context);
      const list = request.params["list"] ?? "";
      if (!isCrisisId(list))
        return { kind: "page", page: wrongPage({ tank, noSuchList: true }), status: 404 };
      return { kind: "page", page: wrongListPage({ list, tank, hasNumbers: hasNumbers(list) }) };
    },
  },
  {
    method: "GET",
    path: to.wrongNumbers(":tank", ":list"),
    answer: ofTank(async (loaded, request, context) => {
      const list = request.params["list"] ?? "";
      if (!isCrisisId(list) || !hasNumbers(list)) return { kind: "not_found", what: "numbers behind a list" };
      const { head, facts, row } = loaded;
      const answers = needsEngine(list) ? await answersFor(loaded, request, context) : null;
      // The slot that waited for the engine asks for its own part alone.
      if (request.query["part"] === "1" && answers !== null)
        return { kind: "page", page: wrongOxygenPage(head, oxygenPart(answers)) };
      const waitFor = needsEngine(list) && answers === null ? to.wrongNumbers(row.id, list) : null;
      const parts = numbersBehind(list, { facts }, answers);
      return { kind: "page", page: wrongNumbersPage({ head, list, parts, waitFor }) };
    }),
  },
];

/** By its row alone: what can't be read, or a store that fails, keeps nobody from a list. */
async function fromTank({ query }: PageRequest, { store }: PageContext): Promise<FromTank> {
  const id = query["tank"];
  const row = id === undefined ? null : await store.tank(id).catch(() => null);
  if (row === null || !row.kept) return null;
  return { id: row.id, name: (row.facts as unknown as TankFile | undefined)?.name ?? "your tank" };
}
