/**
 * Every page in every state that it can be in, by address, for each tank of the cast. Pages are those of `to`: one that
 * is added there and not here fails a test.
 */
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
  return TANK_PAGES.map((page) => ({
    name: `${who}-${page}`,
    path: to.tank(id, page),
    status: 200,
    engine: !["questions", "readings"].includes(page),
  }));
}

export function statesOf(cast: Cast): State[] {
  const { demo, first, nothingYet, danger, longNames, removed } = cast;
  const page = (name: string, path: string, status = 200): State => ({ name, path, status });
  return [
    page("start", to.start()),
    page("new", to.newTank()),
    page("sources", to.sources()),
    page("source", to.source("weiss-1970")),
    page("parameter", to.parameter("grz.harvest_eff_film")),
    page("guide", to.guide()),
    page("guide-entry", to.guideEntry("trochus-snail")),
    page("guide-venomous", to.guideEntry("lionfish")),
    page("wrong", to.wrong()),
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
    page("demo-working", to.working(demo, "larder.film_glass.supply")),
    page("demo-reading", to.reading(demo, cast.reading)),
    page("demo-history", to.history(demo)),
    page("long-names-history", to.history(longNames)),
    page("demo-units", to.units(demo)),
    page("not-found", "/no-such-page", 404),
    page("no-such-tank", to.tank("00000000-0000-4000-8000-000000000000", "larder"), 404),
    page("no-such-figure", to.working(demo, "larder.no_such.figure"), 404),
    page("no-such-animal", to.animal(demo, "no-such-animal"), 404),
    page("no-such-source", to.source("no-such-source"), 404),
    page("taken-away", to.tank(removed), 404),
  ];
}
