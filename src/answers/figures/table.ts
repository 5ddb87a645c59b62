/** All parameters by id: symbols of the model and dotted ids of the supply table, which never meet. */
import { modelParameters, supplyParameters } from "../../catalogue/index.ts";
import type { Parameter } from "../../engine/types/parameter.ts";

export const TABLE: ReadonlyMap<string, Parameter> = new Map([...modelParameters, ...supplyParameters]);
