/** What stands on a parameter of the catalogue: shelves of the larder and limits of the weeks ahead, in sentences. */
import { parametersOfShelf } from "../engine/larder/figures.ts";
import { SHELF_NAME, SHELVES } from "../engine/types/shelf.ts";
import { LIMITS } from "./ahead/limits.ts";

export function usesOf(id: string): string[] {
  const shelves = SHELVES.filter((shelf) => parametersOfShelf(shelf).includes(id)).map(
    (shelf) => SHELF_NAME[shelf],
  );
  return [
    ...(shelves.length === 0 ? [] : [`Larder: the supply of ${shelves.join(", ")}.`]),
    ...LIMITS.filter(({ parameter }) => parameter === id).map(
      ({ words, why }) => `Weeks ahead: the limit in "${words}" (${why}).`,
    ),
  ];
}
