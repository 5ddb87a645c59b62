/** The daybook as a file: the form, and the file itself, sent in pieces. */
import type { FieldDoubt } from "../../answers/questions/doubts.ts";
import type { Values } from "../../answers/questions/prefill.ts";
import { readDate } from "../../contract/quantity/date.ts";
import { isKept } from "../../contract/quantity/outcome.ts";
import { TAKE_OUT_FORMATS } from "../../contract/take-out/taken.ts";
import { preferencesOf } from "../../contract/tank-file/preferences-of.ts";
import { takeOutPage } from "../../web/pages/take-out.tsx";
import { rowsOfTank } from "../bring-in/daybook.ts";
import type { LoadedTank, PageContext, PageReply, PageRequest, PageRoute } from "../route.ts";
import { EXTENSION, TYPE, takeOut } from "../take-out/pieces.ts";
import { ofTank } from "./of-tank.ts";

export const TAKE_OUT_ROUTES: readonly PageRoute[] = [
  { method: "GET", path: "/tanks/:tank/take-out", answer: ofTank(show) },
  { method: "GET", path: "/tanks/:tank/take-out/file", answer: ofTank(file) },
];

function show(tank: LoadedTank, { query }: PageRequest, context: PageContext): Promise<PageReply> {
  return page(tank, { format: query["format"] ?? "csv" }, [], context);
}

async function page(
  { head, row }: LoadedTank,
  values: Values,
  doubts: readonly FieldDoubt[],
  { store }: PageContext,
): Promise<PageReply> {
  let entries = 0;
  for await (const rows of rowsOfTank(store, row.id)) entries += rows.length;
  return {
    kind: "page",
    page: takeOutPage({ head, entries, values, doubts }),
    status: doubts.length === 0 ? 200 : 422,
  };
}

async function file(tank: LoadedTank, { query }: PageRequest, context: PageContext): Promise<PageReply> {
  const { today, now, store } = context;
  const preferences = preferencesOf(tank.document.preferences);
  const doubts: FieldDoubt[] = [];
  const day = (name: "from" | "to", label: string): string | null => {
    const text = query[name] ?? "";
    if (text.trim() === "") return null;
    const read = readDate(text, { preferences, today, future: "planned", label });
    if (isKept(read)) return read.value;
    const choices = read.choices.flatMap((one) =>
      one.text === null ? [] : [{ label: one.label, text: one.text }],
    );
    doubts.push({ field: name, text: read.message.text, choices });
    return null;
  };
  const [from, to] = [day("from", "From"), day("to", "To")];
  const format = TAKE_OUT_FORMATS.find((one) => one === query["format"]) ?? "csv";
  if (from !== null && to !== null && from > to) {
    doubts.push({
      field: "to",
      text: `To "${query["to"] ?? ""}": comes before From. Change one of them`,
      choices: [],
    });
  }
  if (doubts.length > 0) return await page(tank, { ...query, format }, doubts, context);
  const of = { id: tank.row.id, name: tank.head.name };
  return {
    kind: "pieces",
    name: `${tank.head.name}-${format === "readings" ? "readings" : "daybook"}-${today}.${EXTENSION[format]}`,
    type: TYPE[format],
    pieces: takeOut(store, { tank: of, document: tank.document, format, from, to, now }),
  };
}
