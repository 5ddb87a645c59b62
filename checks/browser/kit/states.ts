/**
 * Every page in every state that it can be in, by address, for each tank of the cast. Pages are those of `to`: one that
 * is added there and not here fails a test.
 */
import { CRISIS_IDS } from "../../../src/answers/wrong/list-ids.ts";
import { hasNumbers, needsEngine } from "../../../src/answers/wrong/numbers.ts";
import type { EntryKind } from "../../../src/contract/daybook/kinds.ts";
import { TANK_PAGES, to } from "../../../src/web/page.ts";
import type { Cast } from "./cast.ts";

export interface State {
  /** Also the name of its picture. */
  readonly name: string;
  readonly path: string;
  readonly status: number;
  /** Shows what the engine says of a tank. */
  readonly engine?: boolean;
}

const QUESTION_COUNT = 8;

function tankStates(who: string, id: string): State[] {
  return [...TANK_PAGES, "readings" as const].map((page) => ({
    name: `${who}-${page}`,
    path: to.tank(id, page),
    status: 200,
    engine: !["questions", "readings", "daybook"].includes(page),
  }));
}

/** Forms of the kinds of entry, each with what it asks first. */
const FORMS: readonly (readonly [EntryKind, query?: string])[] = [
  ["growth"],
  ["growth", "?growth=hair_algae"],
  ["sign"],
  ["head_count"],
  ["order"],
  ["addition"],
  ["loss"],
  ["loss", "?animal=trochus%20snail"],
  ["loss", "?animal=scarlet%20hermit&certainty=feared"],
  ["departure"],
  ["move"],
  ["identification"],
  ["chore"],
  ["change"],
  ["treatment"],
  ["outage"],
  ["relocation"],
  ["absence"],
  ["decline", "?advice=danger.tan_mg_n_per_l"],
];

export function statesOf(cast: Cast): State[] {
  const { demo, first, nothingYet, danger, longNames, removed } = cast;
  const page = (name: string, path: string, status = 200): State => ({ name, path, status });
  return [
    page("start", to.start()),
    page("new", to.newTank()),
    page("round", to.round()),
    page("round-by-name", `${to.round()}?sort=name&urgency=today&rows=all`),
    page("round-nothing-found", `${to.round()}?words=nowhere`),
    page("sources", to.sources()),
    page("source", to.source("weiss-1970")),
    page("parameter", to.parameter("grz.harvest_eff_film")),
    page("guide", to.guide()),
    page("guide-entry", to.guideEntry("trochus-snail")),
    page("guide-venomous", to.guideEntry("lionfish")),
    page("wrong", to.wrong()),
    page("wrong-of-tank", to.wrong(demo)),
    ...CRISIS_IDS.map((id) => page(`wrong-${id}`, to.wrongList(id, demo))),
    ...CRISIS_IDS.filter(hasNumbers).map((id) => ({
      ...page(`wrong-numbers-${id}`, to.wrongNumbers(demo, id)),
      engine: needsEngine(id),
    })),
    page("wrong-numbers-danger", to.wrongNumbers(danger, "ammonia")),
    page("wrong-no-such-list", to.wrongList("mood"), 404),
    ...tankStates("demo", demo),
    ...tankStates("first", first),
    ...tankStates("nothing-yet", nothingYet),
    ...tankStates("danger", danger),
    ...tankStates("long-names", longNames),
    ...Array.from({ length: QUESTION_COUNT }, (_, i) =>
      page(`demo-question-${i + 1}`, to.question(demo, i + 1)),
    ),
    page("first-question-2", to.question(first, 2)),
    page("demo-form", to.singleForm(demo)),
    page("first-form", to.singleForm(first)),
    page("long-names-form", to.singleForm(longNames)),
    page("demo-animal-fits", to.animal(demo, "trochus-snail")),
    page("demo-animal-never", to.animal(demo, "pufferfish")),
    page("first-animal", to.animal(first, "mexican-turbo-snail")),
    { ...page("counted-heads", to.tank(cast.counted, "heads")), engine: true },
    page("counted-pictured", to.entry(cast.counted, cast.pictured)),
    page("counted-for-the-seller", to.forSeller(cast.counted, cast.pictured)),
    page("counted-working", to.working(cast.counted, "heads.trochus-snail.now")),
    page("demo-working", to.working(demo, "larder.film_glass.supply")),
    { ...page("demo-learned", to.learned(demo)), engine: true },
    { ...page("first-learned", to.learned(first)), engine: true },
    page("demo-trend-nitrate", to.trend(demo, "no3_mg_per_l")),
    page("demo-trend-all", `${to.trend(demo, "po4_mg_per_l")}?span=all`),
    { ...page("demo-flows", to.trend(demo, "flows")), engine: true },
    page("no-such-trend", to.trend(demo, "mood"), 404),
    page("demo-reading", to.reading(demo, cast.reading)),
    page("demo-entry", to.entry(demo, cast.reading)),
    page("demo-daybook-removed", `${to.tank(demo, "daybook")}?removed=1&kind=growth`),
    page("demo-daybook-kept", `${to.tank(demo, "daybook")}?kept=${cast.reading}`),
    page("demo-wet-hand", to.wetHand(demo)),
    page("first-wet-hand", to.wetHand(first)),
    page("demo-wet-hand-growth", `${to.wetHand(demo)}#growth-hair_algae`),
    page("demo-wet-hand-reading", `${to.wetHand(demo)}#reading-no3_mg_per_l`),
    ...FORMS.map(([kind, query = ""], i) =>
      page(`demo-new-${kind}-${i}`, `${to.newEntry(demo, kind)}${query}`),
    ),
    page("danger-new-head_count", to.newEntry(danger, "head_count")),
    page("danger-new-loss", to.newEntry(danger, "loss")),
    page("no-such-kind", `/tanks/${demo}/daybook/new/mood`, 404),
    page("no-such-entry", to.entry(demo, "no-such-entry"), 404),
    page("demo-history", to.history(demo)),
    page("long-names-history", to.history(longNames)),
    page("demo-units", to.units(demo)),
    page("demo-calendar-feeds", to.calendarFeeds(demo)),
    page("demo-bring-in", to.bringIn(demo)),
    page("demo-bring-in-gone", `${to.bringIn(demo)}/files/none`, 404),
    page("demo-take-out", to.takeOut(demo)),
    page("demo-growths-key", `${to.tank(demo, "growths")}?see=growth`),
    page(
      "demo-growths-suspect",
      `${to.tank(demo, "growths")}?see=growth&trait.colour_brown=yes&trait.texture_strings=yes&trait.gas_bubbles=yes&skip.smell=1`,
    ),
    page(
      "demo-growths-named",
      `${to.tank(demo, "growths")}?see=growth&trait.colour_red=yes&trait.texture_slime=yes&trait.sheets=yes`,
    ),
    page("demo-growths-animal", `${to.tank(demo, "growths")}?see=animal&trait.shape_polyp=yes`),
    page(
      "demo-growths-stranger",
      `${to.tank(demo, "growths")}?see=animal&trait.shape_polyp=yes&trait.flat_disc=yes&trait.many=yes`,
    ),
    page("demo-growths-odd", `${to.tank(demo, "growths")}?see=odd`),
    page("demo-growths-test-now", `${to.tank(demo, "growths")}?see=odd&what=waterline_snails&kinds=2`),
    page(
      "danger-growths-loss",
      `${to.tank(danger, "growths")}?see=odd&what=snail_loss&animal=trochus-snail&clue.new_rock=no`,
    ),
    page("declined-bench", to.tank(cast.declined)),
    page("declined-opened", to.decline(cast.declined)),
    { ...page("demo-wave", to.acceptWave(demo, 1)), engine: true },
    { ...page("demo-order", to.orderWave(demo, 1)), engine: true },
    page("demo-shop", to.shop(demo)),
    page("sums", to.sums(null)),
    page("sum-first", to.sum(null, "oxygen")),
    page("sum-answered", to.sum(null, "oxygen", "salinity=35+psu&temperature=25+C")),
    page("sum-error", to.sum(null, "oxygen", "salinity=35&temperature=warm"), 422),
    page("sum-demo", to.sum(demo, "oxygen")),
    page(
      "demo-sum-working",
      to.sumWorking(demo, "oxygen", "sum.oxygen.saturation", "salinity=35+psu&temperature=25+C"),
    ),
    page(
      "sum-working",
      to.sumWorking(null, "oxygen", "sum.oxygen.saturation", "salinity=35+psu&temperature=25+C"),
    ),
    page("no-such-sum", to.sum(null, "moonlight"), 404),
    page("demo-medicine", to.medicine(demo, "copper")),
    page("demo-medicine-food", to.medicine(demo, "metronidazole")),
    page("no-such-medicine", to.medicine(demo, "blue-bottle"), 404),
    page("demo-arrivals-corals", `${to.tank(demo, "arrivals")}?group=corals&from=2026-06-01`),
    { ...page("demo-arrivals-fallow", `${to.tank(demo, "arrivals")}?fallow=1`), engine: true },
    page("demo-fallow-working", to.fallowWorking(demo, "what_if.ahead.trochus-snail.starves")),
    page("demo-holiday", to.holiday(demo)),
    {
      ...page("demo-holiday-planned", to.holiday(demo, "from=2026-07-01&to=2026-07-15&every=2")),
      engine: true,
    },
    page("demo-holiday-refused", to.holiday(demo, "from=yesterday&to=2026-07-15"), 422),
    page(
      "demo-holiday-working",
      to.holidayWorking(demo, "care.holiday.bags", "from=2026-07-01&to=2026-07-15&every=2"),
    ),
    page("demo-feeding-working", to.working(demo, "care.feeding.nitrogen_in")),
    page("demo-wrong-working", to.working(demo, "care.wrong.unionised_share")),
    page("not-found", "/no-such-page", 404),
    page("no-such-tank", to.tank("00000000-0000-4000-8000-000000000000", "larder"), 404),
    page("no-such-figure", to.working(demo, "larder.no_such.figure"), 404),
    page("no-such-animal", to.animal(demo, "no-such-animal"), 404),
    page("no-such-source", to.source("no-such-source"), 404),
    page("taken-away", to.tank(removed), 404),
  ];
}
