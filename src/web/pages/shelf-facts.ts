/** Shelves of the answers as the larder's charts take them. */
import type { LarderOutput } from "../../contract/output/larder.ts";
import { evenWithin, type ShelfFacts } from "../charts/shelf.ts";

export const shelfFacts = ({ shelves, total_mg_c_per_day }: LarderOutput): ShelfFacts[] =>
  shelves.map(({ id, name, supply_mg_c_per_day, runs_mg_c_per_day, wanted_mg_c_per_day, figures }) => ({
    id,
    name,
    supply: supply_mg_c_per_day,
    runs: runs_mg_c_per_day,
    wanted: wanted_mg_c_per_day,
    evenWithin: evenWithin(total_mg_c_per_day.central),
    figures,
  }));
