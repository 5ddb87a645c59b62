/** Pictures of entries: added, taken away, brought back, sent as bytes; and one entry with them for who sold the animals. */
import { arrivalBefore, type Of, orderBefore } from "../../answers/arrivals/evidence.ts";
import { dateWords, lowered } from "../../answers/words.ts";
import { animalById } from "../../catalogue/index.ts";
import { type DaybookEntry, entryOfRow } from "../../contract/daybook/kinds.ts";
import { isPictured, MOST_PICTURES } from "../../contract/picture/limits.ts";
import type { EntryRow } from "../../store/store.ts";
import { to } from "../../web/page.ts";
import { entrySentence } from "../../web/pages/daybook-words.ts";
import { sellerPage } from "../../web/pages/for-seller.tsx";
import { FULL, keepPicture, shownPicture } from "../pictures/keep.ts";
import { type Deed, pictureView } from "../pictures/view.ts";
import type { LoadedTank, PageContext, PageReply, PageRequest, PageRoute } from "../route.ts";
import { entryPageOf } from "./entry.ts";
import { instantWords } from "./instant-words.ts";
import { ofTank } from "./of-tank.ts";

const ENTRY = "/tanks/:tank/daybook/entries/:entry";

export const PICTURE_ROUTES: readonly PageRoute[] = [
  { method: "POST", path: `${ENTRY}/pictures`, takes: "file", answer: ofTank(add) },
  { method: "POST", path: `${ENTRY}/pictures/:picture`, answer: ofTank(keep) },
  { method: "GET", path: `${ENTRY}/for-the-seller`, answer: ofTank(forSeller) },
  { method: "GET", path: "/tanks/:tank/pictures/:picture", answer: send },
];

const NO_ENTRY: PageReply = { kind: "not_found", what: "entry of that address" };
const NO_PICTURE: PageReply = { kind: "not_found", what: "picture of that address" };

async function entryOf(
  { row }: LoadedTank,
  { params }: PageRequest,
  { store }: PageContext,
): Promise<EntryRow | null> {
  const entry = await store.entry(params["entry"] ?? "");
  return entry?.tankId === row.id && isPictured(entry.kind) ? entry : null;
}

const back = (tank: LoadedTank, entry: EntryRow, deed: Deed): PageReply => ({
  kind: "redirect",
  to: `${to.entry(tank.row.id, entry.id)}?picture=${deed}#pictures`,
});

async function add(tank: LoadedTank, request: PageRequest, context: PageContext): Promise<PageReply> {
  const entry = await entryOf(tank, request, context);
  if (entry === null) return NO_ENTRY;
  const shows = request.form?.get("shows") ?? "";
  const { file = null } = request;
  const hand = { stamp: { at: context.now, by: tank.row.keeper.name }, newId: context.newId };
  const kept = await keepPicture(context.store, entry, { file, shows }, hand);
  if (kept.kind === "kept") return back(tank, entry, kept.again ? "again" : "added");
  const doubts = kept.doubts.map(({ field, message }) => ({ field, text: message.text, choices: [] }));
  return await entryPageOf(tank, entry, { doubts, shows }, context);
}

async function keep(tank: LoadedTank, request: PageRequest, context: PageContext): Promise<PageReply> {
  const entry = await entryOf(tank, request, context);
  if (entry === null) return NO_ENTRY;
  const picture = await context.store.picture(request.params["picture"] ?? "");
  if (picture?.entryId !== entry.id) return NO_PICTURE;
  const kept = request.form?.get("go") === "bring_back";
  const stamp = { at: context.now, by: tank.row.keeper.name };
  const done = await context.store.keepPicture(picture.id, kept, MOST_PICTURES, stamp);
  if (done === "full") {
    const doubts = [{ field: "picture", text: FULL, choices: [] }];
    return await entryPageOf(tank, entry, { doubts, shows: "" }, context);
  }
  return back(tank, entry, kept ? "brought_back" : "taken_away");
}

async function send({ params }: PageRequest, { store }: PageContext): Promise<PageReply> {
  const picture = await shownPicture(store, params["tank"] ?? "", params["picture"] ?? "");
  if (picture === null) return NO_PICTURE;
  const { id, type, sha256 } = picture;
  const ending = type === "image/jpeg" ? "jpg" : type.slice("image/".length);
  return {
    ...{ kind: "picture", type, sha256, name: `picture-${id.slice(0, 8)}.${ending}` },
    read: () => store.pictureImage(id),
  };
}

async function forSeller(tank: LoadedTank, request: PageRequest, context: PageContext): Promise<PageReply> {
  const row = await entryOf(tank, request, context);
  const entry = row === null ? null : entryOfRow(row);
  if (row === null || !row.kept || (entry?.kind !== "addition" && entry?.kind !== "loss")) return NO_ENTRY;
  const pictures = (await context.store.pictures([row.id])).filter(({ takenAway }) => takenAway === null);
  const order = orderBefore(entry, tank.entries);
  return {
    kind: "page",
    page: sellerPage({
      ...{ head: tank.head, entry: row.id, sentence: entrySentence(entry), orderKnown: order !== null },
      facts: factsOf(tank, row, entry, order),
      hourKnown: hourOf(entry.body) !== null,
      pictures: pictures.map((one) => pictureView(one, entry)),
    }),
  };
}

function factsOf(
  { head, entries }: LoadedTank,
  row: EntryRow,
  entry: Of<"addition"> | Of<"loss">,
  order: Of<"order"> | null,
): readonly (readonly [string, string])[] {
  const { body } = entry;
  const known = body.animal === null ? undefined : animalById.get(body.animal);
  const came = entry.kind === "loss" ? arrivalBefore(entry, entries) : null;
  const facts: (readonly [string, string | null])[] = [
    [
      "Animal",
      known === undefined ? body.animal_text : `${lowered(known.commonName)} (${known.scientificName})`,
    ],
    ...(entry.kind === "addition" ? arrivedFacts(entry) : lostFacts(entry)),
    ["When", whenWords(entry)],
    ["Note", body.note],
    ["Order beside it", order === null ? null : `${entrySentence(order)} Asked for on ${whenWords(order)}.`],
    ["Arrived before", came === null ? null : `${entrySentence(came)} On ${whenWords(came)}.`],
    ["Tank", head.keeper === "" ? head.name : `${head.name}, kept by ${head.keeper}`],
    [
      "Written down",
      `${instantWords(row.stamp.at)}, by ${row.stamp.by}${row.version === 1 ? "" : `; version ${row.version}`}`,
    ],
  ];
  return facts.flatMap(([name, words]) => (words === null || words === "" ? [] : [[name, words] as const]));
}

const arrivedFacts = ({ body }: Of<"addition">): readonly (readonly [string, string | null])[] => [
  ["Sold as", body.sold_as],
  ["Dead on arrival", String(body.dead_on_arrival)],
  [
    "Alive",
    `${body.count}${body.condition === null || body.condition === "usual" ? "" : `, ${body.condition}`}`,
  ],
];

const lostFacts = ({ body }: Of<"loss">): readonly (readonly [string, string | null])[] => [
  ["Lost", String(body.count)],
  ["Found", body.certainty === "found" ? "dead" : "nothing; feared lost"],
];

/** "14 Jun 2026, 21:30 (UTC+01:00)"; without its zone where that is not known; the day alone where no hour was said. */
function whenWords({ on, body }: Pick<DaybookEntry, "on" | "body">): string {
  const hour = hourOf(body);
  if (hour === null) return dateWords(on);
  const zone = /(Z|[+-]\d\d:\d\d)$/.exec(body.observed_at ?? "")?.[1];
  const where = zone === undefined ? "" : ` (UTC${zone === "Z" ? "" : zone})`;
  return `${dateWords(on)}, ${hour}${where}`;
}

/** "21:30" of the instant; where the tank's zone is not known there is none, and the hour stands in what was typed. */
const hourOf = ({ observed_at, observed_text }: DaybookEntry["body"]): string | null =>
  /(?:T|\s|^)(\d{1,2}:\d\d)/.exec(observed_at ?? observed_text)?.[1] ?? null;
