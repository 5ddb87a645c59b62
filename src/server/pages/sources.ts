/** Sources and parameters of the catalogue: what stands behind the figures. */
import { restsOn } from "../../answers/growths/rests-on.ts";
import { usesOf } from "../../answers/parameter-uses.ts";
import { animals, modelParameters, type Source, sources, supplyParameters } from "../../catalogue/index.ts";
import type { Parameter } from "../../engine/types/parameter.ts";
import { parameterPage } from "../../web/pages/parameter.tsx";
import { sourcePage } from "../../web/pages/source.tsx";
import { sourcesPage } from "../../web/pages/sources.tsx";
import type { PageReply, PageRoute } from "../route.ts";

const parameters: readonly Parameter[] = [...modelParameters.values(), ...supplyParameters.values()];

const cited: ReadonlyMap<string, number> = new Map(
  [...sources.keys()].map((key) => [
    key,
    [...parameters, ...animals].filter((one) => one.sources.includes(key)).length + restsOn(key).length,
  ]),
);

export const SOURCES_ROUTES: readonly PageRoute[] = [
  {
    method: "GET",
    path: "/sources",
    answer: async () => ({ kind: "page", page: sourcesPage({ sources: [...sources.values()], cited }) }),
  },
  {
    method: "GET",
    path: "/sources/:key",
    answer: async ({ params }) => sourceReply(params["key"] ?? ""),
  },
  {
    method: "GET",
    path: "/parameters/:id",
    answer: async ({ params }) => parameterReply(params["id"] ?? ""),
  },
];

/** The works that a parameter or an animal rests on. */
export const worksOf = ({ sources: keys }: Pick<Parameter, "sources">): Source[] =>
  keys.flatMap((key) => sources.get(key) ?? []);

function sourceReply(key: string): PageReply {
  const source = sources.get(key);
  if (source === undefined) return { kind: "not_found", what: "source of that name" };
  const restOn = <T extends { readonly sources: readonly string[] }>(all: readonly T[]) =>
    all.filter((one) => one.sources.includes(key));
  return {
    kind: "page",
    page: sourcePage({
      source,
      ...{ parameters: restOn(parameters), animals: restOn(animals), signs: restsOn(key) },
    }),
  };
}

function parameterReply(id: string): PageReply {
  const parameter = modelParameters.get(id) ?? supplyParameters.get(id);
  if (parameter === undefined) return { kind: "not_found", what: "parameter of that name" };
  return {
    kind: "page",
    page: parameterPage({
      parameter,
      sources: worksOf(parameter),
      uses: usesOf(id),
      rangeOf: [...modelParameters.values()].filter(({ range }) => range === id).map((one) => one.id),
    }),
  };
}
