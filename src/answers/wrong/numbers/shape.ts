/** What stands behind a list for one tank; figures of this part of care are `care.wrong.NAME`. */
import { careFigures } from "../../numbers-part.ts";

export { bare, type NumbersPart, parameter, roughly, toldOf } from "../../numbers-part.ts";

export const troubleFigure = careFigures("wrong", "trouble.md");
