/** Trends of one tank, one quantity's trend, its readings as a file, and the flows behind nitrate and phosphate. */
import { latestReadings, saidOf } from "../../answers/bench/latest.ts";
import { recordOf } from "../../answers/record/record.ts";
import { recordAnswersOf } from "../../answers/record-answers.ts";
import { trendQuantities } from "../../answers/trends/quantities.ts";
import { trendsOf } from "../../answers/trends/trends.ts";
import { shownIn } from "../../answers/units-shown.ts";
import { type DaybookEntry, entryOfRow } from "../../contract/daybook/kinds.ts";
import { MEASURED, type Measured } from "../../contract/daybook/reading.ts";
import type { ReadingSeen, TankRecord } from "../../engine/types/record.ts";
import { to } from "../../web/page.ts";
import { cellOf } from "../../web/pages/chart-csv.ts";
import { FLOWS, trendsPage } from "../../web/pages/trends.tsx";
import { flowsPage } from "../../web/pages/trends-flows.tsx";
import { quantityTrendPage, trendChart } from "../../web/pages/trends-quantity.tsx";
import type { LoadedTank, PageContext, PageReply, PageRequest, PageRoute } from "../route.ts";
import { answeredPage } from "./answered.ts";
import { keptReadings } from "./kept-readings.ts";
import { ofTank } from "./of-tank.ts";

export const TREND_ROUTES: readonly PageRoute[] = [
  { method: "GET", path: to.tank(":tank", "trends"), answer: ofTank(showAll) },
  answeredPage({
    path: to.trend(":tank", FLOWS),
    here: "trends",
    what: "Flows of nitrogen and phosphorus",
    address: (tank) => to.trend(tank, FLOWS),
    draw: ({ loaded, answers }) =>
      answers.flows === undefined
        ? { kind: "not_found", what: "flows of this tank" }
        : flowsPage({ head: loaded.head, flows: answers.flows }),
  }),
  { method: "GET", path: to.trend(":tank", ":quantity"), answer: ofTank(showOne) },
  ...MEASURED.map(
    (quantity): PageRoute => ({
      method: "GET",
      path: to.csv(":tank", trendChart(quantity)),
      answer: ofTank((tank, _, context) => numbers(quantity, tank, context)),
    }),
  ),
];

const unitsOf = ({ document }: LoadedTank) => shownIn(document.preferences);

function showAll(tank: LoadedTank, _: PageRequest, { answers, today }: PageContext): PageReply {
  const { facts, record, head } = tank;
  const output = recordAnswersOf({ facts, record, today }, unitsOf(tank)).trends;
  const dangers = latestReadings(keptReadings(tank.readings), tank.document, tank.notices, today)
    .filter(({ flag, entry }) => flag === "danger" && entry === null)
    .map((danger) => ({ ...danger, said: danger.said === null ? null : saidOf(danger.said) }));
  const flows = answers.ready(facts, undefined, record)?.flows ?? null;
  return { kind: "page", page: trendsPage({ head, output, dangers, flows }) };
}

async function showOne(
  tank: LoadedTank,
  { params, query }: PageRequest,
  context: PageContext,
): Promise<PageReply> {
  const quantity = MEASURED.find((one) => one === params["quantity"]);
  const span = query["span"] === "all" ? "all" : "recent";
  if (quantity === undefined) return { kind: "not_found", what: "quantity of that name" };
  const record = span === "all" ? await wholeRecord(quantity, tank, context) : tank.record;
  const { output } = trendsOf(
    {
      facts: tank.facts,
      record: { ...record, observations: readingsIn(record, quantity) },
      today: context.today,
    },
    { shown: unitsOf(tank), span },
  );
  const [trend] = output.quantities;
  if (trend === undefined) return { kind: "not_found", what: "reading of that quantity in this tank" };
  return { kind: "page", page: quantityTrendPage({ head: tank.head, trend, span }) };
}

function readingsIn({ observations }: TankRecord, quantity: Measured): ReadingSeen[] {
  const { reading } = trendQuantities(null).find(({ id }) => id === quantity)!;
  return observations.filter((one): one is ReadingSeen => one.kind === "reading" && one.quantity === reading);
}

/** Rows of the daybook that are read in one turn of the program: others are served between two. */
const ROWS_A_TURN = 500;

/** The quantity asked of last, of each record: its page and its file of numbers ask for the same. */
const whole = new WeakMap<TankRecord, { readonly quantity: Measured; readonly record: TankRecord }>();

/** A tank's record with every reading of a quantity that there ever was, not the latest alone. */
async function wholeRecord(
  quantity: Measured,
  tank: LoadedTank,
  { store, today }: PageContext,
): Promise<TankRecord> {
  const had = whole.get(tank.record);
  if (had?.quantity === quantity) return had.record;
  const readings: ReadingSeen[] = [];
  let after: { on: string; id: string } | null = null;
  for (;;) {
    const rows = await store.entries(tank.row.id, {
      ...{ kind: "reading", limit: ROWS_A_TURN },
      ...(after === null ? {} : { after }),
    });
    const entries = rows
      .filter(({ body }) => body["quantity"] === quantity)
      .flatMap((row): DaybookEntry[] => {
        const entry = entryOfRow(row);
        return entry === null ? [] : [entry];
      });
    readings.unshift(...readingsIn(recordOf(entries, today), quantity));
    const last = rows.at(-1);
    if (rows.length < ROWS_A_TURN || last === undefined) break;
    after = { on: last.on, id: last.id };
    await new Promise((turn) => setImmediate(turn));
  }
  const record = { ...tank.record, observations: readings };
  whole.set(tank.record, { quantity, record });
  return record;
}

/** Every reading, as it was read: bounds say so in a column of their own. */
async function numbers(quantity: Measured, tank: LoadedTank, context: PageContext): Promise<PageReply> {
  const { unit, scale, label } = trendQuantities(unitsOf(tank)).find(({ id }) => id === quantity)!;
  const record = await wholeRecord(quantity, tank, context);
  const shown = (value: number) => Number((value * scale.factor + scale.offset).toPrecision(5));
  const named = unit === "" ? label.toLowerCase() : `${label.toLowerCase()} (${unit})`;
  const rows = [
    ["date", named, "bound", "step of the test", "danger"],
    ...readingsIn(record, quantity).map(({ on, value, censored, step, flag }) => [
      on,
      shown(censored === "below" ? value.high : censored === "above" ? value.low : value.central),
      censored ?? "",
      step === null ? "" : Number((step * scale.factor).toPrecision(5)),
      flag === "danger" ? "danger" : "",
    ]),
  ];
  const text = rows.map((row) => `${row.map(cellOf).join(",")}\r\n`).join("");
  const name = `${tank.head.name}-${trendChart(quantity)}-${context.today}.csv`;
  return { kind: "file", name, type: "text/csv; charset=utf-8", text };
}
