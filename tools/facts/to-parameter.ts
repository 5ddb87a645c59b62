/** From a row of a parameter file to the `Parameter` the engine uses. */
import type { Parameter } from "../../src/engine/types/parameter.ts";
import type { ParameterFile } from "./schema.ts";

export function toParameter(id: string, row: ParameterFile[string]): Parameter {
  const { low, central, high, unit, evidence, source } = row.spread;
  const note = [row.from, row.note].filter((part) => part !== undefined).join(". ");
  return {
    id,
    meaning: row.meaning,
    unit,
    spread: { low, central, high },
    evidence,
    sources: source,
    ...(row.range === undefined ? {} : { range: row.range }),
    ...(row.rivals === undefined
      ? {}
      : {
          rivals: row.rivals.map(({ value, source: key, note: why }) => ({
            value,
            source: key,
            ...(why === undefined ? {} : { note: why }),
          })),
        }),
    ...(note === "" ? {} : { note }),
  };
}
