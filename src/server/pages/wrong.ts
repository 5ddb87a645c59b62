/** The crisis page: static, but for the way back to the tank that was left. It comes even where the tank can't be read. */
import type { TankFile } from "../../contract/tank-file/schema.ts";
import { to } from "../../web/page.ts";
import { wrongPage } from "../../web/pages/wrong.tsx";
import type { PageRoute } from "../route.ts";

export const WRONG_ROUTES: readonly PageRoute[] = [
  {
    method: "GET",
    path: to.wrong(),
    answer: async ({ query }, { store }) => {
      const id = query["tank"];
      const row = id === undefined ? null : await store.tank(id).catch(() => null);
      const name = (row?.facts as unknown as TankFile | undefined)?.name ?? "your tank";
      return { kind: "page", page: wrongPage({ tank: row === null ? null : { id: row.id, name } }) };
    },
  },
];
