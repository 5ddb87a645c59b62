/** What is left to the keeper's own hands on each shelf. */
import { SHELVES, type ShelfId } from "../types/shelf.ts";
import type { TankFacts } from "../types/tank.ts";
import type { HandWork } from "./plan-shape.ts";
import type { WaveDraft } from "./waves.ts";

const SHELF_WORK: Readonly<Record<ShelfId, string>> = {
  film_glass: "wipe the glass: no crew spares the scraper",
  film_rock: "brush the rock when you change water, or let it be",
  film_sand: "let it be, or siphon the top of the sand",
  hair_algae: "pull long tufts by hand: no crew clears them, and it comes back while nutrients are high",
  bubble_algae: "take bubbles out whole, without bursting them",
  detritus_sand: "siphon it with the water change",
  detritus_crevice: "blow out the rock before the water change",
  uneaten_feed: "feed less, or take out what is left after two minutes",
  carrion: "look for the dead and take them out",
};

export function handWorkOf(last: WaveDraft, facts: TankFacts): HandWork[] {
  return SHELVES.flatMap((shelf) => {
    const left = last.supply.central[shelf] - last.answer.eatenCentral[shelf];
    if (left <= Math.max(1, 0.15 * last.supply.central[shelf])) return [];
    return [
      {
        shelf,
        leftMgC: left,
        text:
          shelf === "film_glass"
            ? `${SHELF_WORK[shelf]}, about every ${Math.round(facts.wipeGlassEveryDays.central)} days`
            : SHELF_WORK[shelf],
      },
    ];
  });
}
