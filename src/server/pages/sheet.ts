/** The sheet of one tank. */
import { sheetOf } from "../../answers/sheet/sheet.ts";
import { to } from "../../web/page.ts";
import { sheetPage } from "../../web/pages/sheet.tsx";
import type { PageRoute } from "../route.ts";
import { answeredPage } from "./answered.ts";

export const SHEET_ROUTES: readonly PageRoute[] = [
  answeredPage({
    path: "/tanks/:tank/sheet",
    here: "sheet",
    what: "Sheet",
    address: (tank) => to.tank(tank, "sheet"),
    draw: ({ loaded, answers, today }) =>
      sheetPage({ head: loaded.head, sheet: sheetOf(answers), version: loaded.row.version, today }),
  }),
];
