/** How a keeper's shop sells and sends, kept in the tank's document; read by the one reader of tank files. */
import type { FieldDoubt } from "../../answers/questions/doubts.ts";
import { withEntries } from "../../answers/questions/paths.ts";
import type { Values } from "../../answers/questions/prefill.ts";
import { animalById, findAnimal } from "../../catalogue/index.ts";
import type { Finding } from "../../contract/tank-file/finding.ts";
import { readTankFile } from "../../contract/tank-file/read.ts";
import type { TankFile } from "../../contract/tank-file/schema.ts";
import type { Json } from "../../store/store.ts";
import { to } from "../../web/page.ts";
import { packField, shopPage } from "../../web/pages/shop.tsx";
import { withReadings } from "../load-tank.ts";
import type { LoadedTank, PageContext, PageReply, PageRequest, PageRoute } from "../route.ts";
import { answersFor, NO_TANK, ofTank } from "./of-tank.ts";
import { sentValues, versionOf } from "./sent.ts";

export const SHOP_ROUTES: readonly PageRoute[] = [
  {
    method: "GET",
    path: "/tanks/:tank/errands/shop",
    answer: ofTank((tank, request, context) => page(tank, request, context)),
  },
  { method: "POST", path: "/tanks/:tank/errands/shop", answer: ofTank(keep) },
];

const FIELDS = ["lead_days", "least_heads", "holds_below_c", "holds_above_c"] as const;

interface Shown {
  readonly values?: Values;
  readonly doubts?: readonly FieldDoubt[];
  readonly clash?: boolean;
}

async function page(
  tank: LoadedTank,
  request: PageRequest,
  context: PageContext,
  { values, doubts = [], clash = false }: Shown = {},
  status = 200,
): Promise<PageReply> {
  // The plan only names kinds here: where it is not ready, those that have a pack already will do.
  const answers = await answersFor(tank, request, context);
  const planned = answers?.waves.to_add.map(({ id }) => id) ?? [];
  const known = (tank.facts.shop?.packs ?? []).map(({ animal }) => animal);
  const sent = Object.keys(values ?? {}).flatMap((name) => packOf(name) ?? []);
  const kinds = [...new Set([...planned, ...known, ...sent])].flatMap((id) => {
    const animal = animalById.get(id);
    return animal === undefined ? [] : [{ id, name: animal.commonName }];
  });
  const view = { head: tank.head, version: tank.row.version, kinds, doubts, clash };
  return { kind: "page", page: shopPage({ ...view, values: values ?? valuesOf(tank.document) }), status };
}

const packOf = (field: string): string | null =>
  field.startsWith(packField("")) ? field.slice(packField("").length) : null;

function valuesOf({ shop }: TankFile): Values {
  return Object.fromEntries([
    ...FIELDS.flatMap((name) => (shop?.[name] === undefined ? [] : [[name, String(shop[name])] as const])),
    ...(shop?.packs ?? []).flatMap(({ animal, heads }) => {
      const found = findAnimal(animal);
      return found.kind === "one" ? [[packField(found.animal.id), String(heads)] as const] : [];
    }),
  ]);
}

async function keep(tank: LoadedTank, request: PageRequest, context: PageContext): Promise<PageReply> {
  const sent = sentValues(request.form);
  const file = withEntries(tank.document, changes(sent));
  const together = withReadings(file, tank.readings);
  const read = readTankFile(JSON.stringify(together), { today: context.today, findAnimal });
  if (!read.ok) {
    const doubts = read.findings.map((finding) => doubtOf(finding, file));
    return page(tank, request, context, { values: sent, doubts }, 422);
  }
  const stamp = { at: context.now, by: tank.row.keeper.name };
  const from = versionOf(sent);
  const saved = await context.store.saveFacts(tank.row.id, from, file as unknown as Json, stamp);
  if (saved.kind === "not_found") return NO_TANK;
  if (saved.kind === "saved") return { kind: "redirect", to: to.tank(tank.row.id, "errands") };
  const current = await context.loadTank(tank.row.id);
  return current === null ? NO_TANK : page(current, request, context, { clash: true }, 409);
}

function changes(sent: Values): readonly (readonly [string, unknown])[] {
  const text = (name: string): string | undefined => (sent[name] ?? "").trim() || undefined;
  const packs = Object.keys(sent).flatMap((name) => {
    const animal = packOf(name);
    const heads = text(name);
    return animal === null || heads === undefined ? [] : [{ animal, heads }];
  });
  return [
    ...FIELDS.map((name) => [`shop.${name}`, text(name)] as const),
    ["shop.packs", packs.length === 0 ? undefined : packs],
  ];
}

/** Beside its field; a finding about something else in the document stands at the first. */
function doubtOf({ path, message, choices }: Finding, { shop }: TankFile): FieldDoubt {
  const pack = /^shop\.packs\[(\d+)\]/.exec(path)?.[1];
  const animal = pack === undefined ? undefined : shop?.packs?.[Number(pack)]?.animal;
  const name = FIELDS.find((one) => path === `shop.${one}`);
  return {
    field: animal === undefined ? (name ?? FIELDS[0]) : packField(animal),
    text: message.text,
    choices: choices.flatMap(({ label, text }) => (text === null ? [] : [{ label, text }])),
  };
}
