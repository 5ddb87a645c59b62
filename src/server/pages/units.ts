/** Units of a tank's pages, kept in its document's preferences. */
import type { FieldDoubt } from "../../answers/questions/doubts.ts";
import { judged } from "../../answers/questions/form.ts";
import { withEntries } from "../../answers/questions/paths.ts";
import type { Values } from "../../answers/questions/prefill.ts";
import { shownIn } from "../../answers/units-shown.ts";
import { decimalSign } from "../../contract/quantity/preferences.ts";
import { isZone } from "../../contract/quantity/zone.ts";
import type { TankFile } from "../../contract/tank-file/schema.ts";
import { SHOWN_IN, SHOWN_QUANTITIES } from "../../contract/tank-file/shown-in.ts";
import type { Json } from "../../store/store.ts";
import { to } from "../../web/page.ts";
import { unitsPage } from "../../web/pages/units.tsx";
import { withReadings } from "../load-tank.ts";
import type { LoadedTank, PageContext, PageReply, PageRequest, PageRoute } from "../route.ts";
import { NO_TANK, ofTank } from "./of-tank.ts";
import { sentValues, versionOf } from "./sent.ts";

export const UNIT_ROUTES: readonly PageRoute[] = [
  { method: "GET", path: "/tanks/:tank/units", answer: ofTank((tank, request) => page(tank, request.query)) },
  { method: "POST", path: "/tanks/:tank/units", answer: ofTank(keep) },
];

function page(
  tank: LoadedTank,
  query: Values,
  shown: { readonly values?: Values; readonly doubts?: readonly FieldDoubt[]; readonly clash?: boolean } = {},
  status = 200,
): PageReply {
  const { head, row, document } = tank;
  const view = {
    movedTo: tank.zone !== null && tank.zone !== document.preferences?.zone ? tank.zone : null,
    head,
    version: row.version,
    values: shown.values ?? valuesOf(document),
    doubts: shown.doubts ?? [],
    saved: query["kept"] === "1",
    clash: shown.clash ?? false,
  };
  return { kind: "page", page: unitsPage(view), status };
}

function valuesOf({ preferences }: TankFile): Values {
  return {
    ...shownIn(preferences),
    decimal: decimalSign(preferences?.locale ?? "en") === "," ? "comma" : "point",
    dates: preferences?.dates ?? "ask",
    zone: preferences?.zone ?? "",
  };
}

async function keep(tank: LoadedTank, { form }: PageRequest, context: PageContext): Promise<PageReply> {
  const sent = sentValues(form);
  const zone = (sent["zone"] ?? "").trim();
  if (zone !== "" && !isZone(zone)) {
    const text = `Time zone "${zone.slice(0, 100)}": not one we know. Enter one such as Europe/London, or leave it empty`;
    const doubts = [{ field: "zone", text, choices: [] }];
    return page(tank, {}, { values: { ...valuesOf(tank.document), ...sent }, doubts }, 422);
  }
  const file = withEntries(tank.document, changes(sent, tank.document));
  const together = (one: TankFile) => withReadings(one, tank.readings);
  const result = judged(file, [], sent, { today: context.today, together });
  if (!result.ok) {
    // A text that reads otherwise with another decimal sign or order of dates would be asked about.
    const doubts = result.doubts.map(({ text }) => ({ field: "decimal", text, choices: [] }));
    return page(tank, {}, { values: { ...valuesOf(tank.document), ...sent }, doubts }, 422);
  }
  const stamp = { at: context.now, by: tank.row.keeper.name };
  const from = versionOf(sent);
  const saved = await context.store.saveFacts(tank.row.id, from, result.file as unknown as Json, stamp);
  if (saved.kind === "not_found") return NO_TANK;
  if (saved.kind === "saved") return { kind: "redirect", to: `${to.units(tank.row.id)}?kept=1` };
  const current = await context.loadTank(tank.row.id);
  return current === null ? NO_TANK : page(current, {}, { clash: true }, 409);
}

function changes(sent: Values, document: TankFile): readonly (readonly [string, unknown])[] {
  const shown = SHOWN_QUANTITIES.flatMap((quantity) => {
    const unit = SHOWN_IN[quantity].find((one) => one === sent[quantity]);
    return unit === undefined ? [] : [[`preferences.shown_in.${quantity}`, unit] as const];
  });
  const gallon = { L: undefined, "US gal": "us", "imp gal": "imperial" }[sent["volume"] ?? ""];
  const locale = { comma: "de-DE", point: "en-GB" }[sent["decimal"] ?? ""];
  const dates = sent["dates"] ?? "";
  const zone = (sent["zone"] ?? "").trim();
  return [
    ...shown,
    ...(sent["zone"] === undefined ? [] : [["preferences.zone", zone === "" ? undefined : zone] as const]),
    // Who reads gallons means those when they write "55 gal".
    ...(gallon === undefined ? [] : [["preferences.gallon", gallon] as const]),
    ...(sent["length"] === "in" || sent["length"] === "cm"
      ? [["preferences.length", sent["length"]] as const]
      : []),
    ...(locale === undefined || sent["decimal"] === valuesOf(document)["decimal"]
      ? []
      : [["preferences.locale", locale] as const]),
    ...(["dmy", "mdy", "ask"].includes(dates)
      ? [["preferences.dates", dates === "ask" ? undefined : dates] as const]
      : []),
  ];
}
