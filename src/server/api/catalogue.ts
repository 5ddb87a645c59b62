/** The catalogue and the science behind it, read only; and what this API is. */
import { animalsOutputOf } from "../../answers/animals/output.ts";
import { ENGINE_VERSION } from "../../answers/version.ts";
import {
  animalById,
  animals as everyAnimal,
  modelParameters,
  type Source,
  supplyParameters,
  sources as works,
} from "../../catalogue/index.ts";
import { API_ROOT } from "../../contract/http/openapi.ts";
import type { Parameter } from "../../engine/types/parameter.ts";
import { type Handler, notFound } from "./call.ts";

export const about: Handler = async () => ({
  status: 200,
  body: { program: "grazewell", engine: ENGINE_VERSION, openapi: `${API_ROOT}/openapi.json` },
});

export const animals: Handler = async () => ({
  status: 200,
  body: animalsOutputOf(
    everyAnimal.map((animal) => ({ animal, fit: null })),
    null,
  ),
});

export const animal: Handler = async ({ params }) => {
  const found = animalById.get(params["animal"] ?? "");
  if (found === undefined) throw notFound();
  return { status: 200, body: animalsOutputOf([{ animal: found, fit: null }], null) };
};

export const parameters: Handler = async () => ({
  status: 200,
  body: { parameters: [...modelParameters.values(), ...supplyParameters.values()].map(parameterView) },
});

export const parameter: Handler = async ({ params }) => {
  const id = params["parameter"] ?? "";
  const found = modelParameters.get(id) ?? supplyParameters.get(id);
  if (found === undefined) throw notFound();
  return { status: 200, body: parameterView(found) };
};

const parameterView = ({ id, meaning, unit, spread, evidence, sources, note }: Parameter) => ({
  id,
  meaning,
  unit,
  value: { low: spread.low, central: spread.central, high: spread.high },
  evidence,
  sources: [...sources],
  note: note ?? null,
});

export const sources: Handler = async () => ({
  status: 200,
  body: { sources: [...works.values()].map(sourceView) },
});

export const source: Handler = async ({ params }) => {
  const found = works.get(params["source"] ?? "");
  if (found === undefined) throw notFound();
  return { status: 200, body: sourceView(found) };
};

const sourceView = ({ key, title, about: words, authors, year, where, doi, opened, note }: Source) => ({
  key,
  title: title ?? null,
  about: words,
  authors: authors ?? null,
  year: year ?? null,
  where: where ?? null,
  doi: doi ?? null,
  opened,
  note: note ?? null,
});
