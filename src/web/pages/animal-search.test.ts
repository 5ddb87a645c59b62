import { expect, test } from "vitest";
import { fitsSearch } from "./animal-search.tsx";

const trochus = {
  name: "banded trochus snail",
  also_sold_as: ["turban top snail"],
  scientific_name: "Trochus spp. / Rochia nilotica (juv.)",
  group: "snail",
};

test.each(["trochus", "TROCHUS", "snail troch", "rochia", "turban top", " top "])(
  '"%s" finds it',
  (search) => {
    expect(fitsSearch(trochus, search)).toBe(true);
  },
);

test.each(["rochus", "trochus crab", "hermit"])('"%s" does not', (search) => {
  expect(fitsSearch(trochus, search)).toBe(false);
});
