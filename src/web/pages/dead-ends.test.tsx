/** Every number that a page shows opens its working, and every working leads to a source in at most three steps. */
import { beforeAll, describe, expect, test } from "vitest";
import { type Example, exampleTank, TODAY } from "../../../checks/kit/example-answers.ts";
import { errandsOf } from "../../answers/errands/errands.ts";
import { sheetOf } from "../../answers/sheet/sheet.ts";
import type { TankAnswers } from "../../answers/tank-answers.ts";
import { type WorkingFigure, workingOf } from "../../answers/working.ts";
import { animalById, animals, modelParameters, sources, supplyParameters } from "../../catalogue/index.ts";
import { PAGE_ROUTES } from "../../server/pages/index.ts";
import type { Page } from "../page.ts";
import { renderPart } from "../part.tsx";
import { aheadPage } from "./ahead.tsx";
import { animalPage } from "./animal.tsx";
import { animalsPage } from "./animals.tsx";
import { errandsPage } from "./errands.tsx";
import { larderPage } from "./larder.tsx";
import { sheetPage } from "./sheet.tsx";
import { wavesPage } from "./waves.tsx";
import { workingPage } from "./working.tsx";

/** A young tank with waves, an old and full one, and one where nothing may be added. */
const TANKS = ["first-reef.yaml", "mature-400.yaml", "overstocked-75.yaml"];
/** Three tanks planned and forecast on a busy machine. */
const PLENTY_MS = 600_000;
let examples: readonly (Example & {
  readonly rendered: readonly (readonly [title: string, html: string])[];
})[];
beforeAll(async () => {
  examples = [];
  for (const file of TANKS) {
    const example = await exampleTank(file);
    const rendered = pagesOf(example).map((page) => [page.title, renderPart(page)] as const);
    examples = [...examples, { ...example, rendered }];
  }
}, PLENTY_MS);

function pagesOf({ head, facts, answers }: Example): readonly Page[] {
  const asOf = answers.waves.tank.as_of;
  return [
    larderPage({ head, answers }),
    wavesPage({ head, answers, today: TODAY }),
    aheadPage({ head, answers, readings: facts.readings, asked: 13, of: "all" }),
    animalsPage({ head, answers, search: "" }),
    ...answers.animals.animals.map((row) =>
      animalPage({ animal: animalById.get(row.id)!, sources: [], here: { head, row, asOf } }),
    ),
    errandsPage({
      ...{ head, gate: null, ordering: null, strays: [], shop: undefined },
      errands: errandsOf(answers, (id) => animalById.get(id)?.supplementalFood ?? null),
    }),
    sheetPage({ head, sheet: sheetOf(answers), version: 1, today: TODAY }),
  ];
}

const all = (pattern: RegExp, html: string): string[] =>
  [...html.matchAll(pattern)].map(([, found]) => found!);

/** Figures that a page shows. */
const figuresIn = (html: string): string[] => all(/data-figure="([^"]*)"/g, html);

describe.each(TANKS.map((file, i) => [file, i] as const))("%s", (_, i) => {
  test("each page shows numbers, and each of them has a working", () => {
    const { answers, rendered } = examples[i]!;
    const missing = rendered.flatMap(([title, html]) => {
      const figures = figuresIn(html);
      if (figures.length === 0) return [`no figure at all: ${title}`];
      return figures.filter((id) => workingOf(answers, id) === null).map((id) => `${id} on ${title}`);
    });
    expect([...new Set(missing)]).toEqual([]);
  });

  test("each working that is shown renders, and its own figures have workings", () => {
    const { head, answers, rendered } = examples[i]!;
    const shown = new Set(rendered.flatMap(([, html]) => figuresIn(html)));
    const missing = [...shown].flatMap((id) => {
      const figure = workingOf(answers, id);
      if (figure === null) return [];
      const html = renderPart(workingPage({ head, figure, asOf: TODAY }));
      return figuresIn(html).filter((next) => workingOf(answers, next) === null);
    });
    expect([...new Set(missing)]).toEqual([]);
  });

  test("from each figure a source, a typed fact or a stated default is at most three steps away", () => {
    const { answers, rendered } = examples[i]!;
    const shown = new Set(rendered.flatMap(([, html]) => figuresIn(html)));
    expect([...shown].filter((id) => stepsToGround(answers, id) > 3)).toEqual([]);
  });

  test("each address that a page links to belongs to a route or a built page", () => {
    const unknown = examples[i]!.rendered.flatMap(([, html]) => all(/href="([^"]*)"/g, html)).filter(
      (href) => !href.startsWith("#") && !isServed(href.split(/[?#]/)[0]!),
    );
    expect([...new Set(unknown)]).toEqual([]);
  });
});

/** Steps from a figure to something that is no figure: a source, a parameter, what was typed or assumed. */
function stepsToGround(answers: TankAnswers, id: string, before: readonly string[] = []): number {
  const figure = workingOf(answers, id);
  if (figure === null || before.includes(id)) return Number.POSITIVE_INFINITY;
  if (isGrounded(figure)) return 1;
  const next = figure.inputs.flatMap(({ figure: link }) => (link === null ? [] : [link]));
  return 1 + Math.min(...next.map((link) => stepsToGround(answers, link, [...before, id])));
}

const isGrounded = ({ inputs, parameters, animals: kinds }: WorkingFigure): boolean =>
  parameters.some((one) => one.sources.length > 0) ||
  kinds.some((one) => one.sources.length > 0) ||
  // Nothing but what was typed or assumed: the working says so.
  inputs.every(({ figure }) => figure === null);

/** Pages of others, which their own tests open. */
const ELSEWHERE = [/^\/tanks\/example$/, /^\/tanks\/example\/(questions\/\d|form|readings|what-if)$/];

const isServed = (path: string): boolean =>
  ELSEWHERE.some((pattern) => pattern.test(path)) ||
  PAGE_ROUTES.some(({ path: pattern }) => new RegExp(`^${pattern.replaceAll(/:\w+/g, "[^/]+")}$`).test(path));

test("a source stands behind every key that a parameter, its rivals or an animal names", () => {
  const parameters = [...modelParameters.values(), ...supplyParameters.values()];
  const keys = [...parameters, ...animals].flatMap((one) => one.sources);
  expect(keys.filter((key) => !sources.has(key))).toEqual([]);
  const rivals = parameters.flatMap(({ rivals: some }) => (some ?? []).map(({ source }) => source));
  expect(rivals.filter((key) => !sources.has(key))).toEqual([]);
});
