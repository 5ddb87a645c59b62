import fc from "fast-check";
import { expect, test } from "vitest";
import { plain } from "../../answers/sentence.ts";
import { RATION_MG_C } from "../../engine/types/shelf.ts";
import { grainsDrawn } from "./grain-row-view.ts";
import { evenWithin, leaning, type ShelfFacts, shortOf20, shortWords, supplyWords } from "./shelf.ts";
import { shelfPairsView } from "./shelf-pair-view.ts";
import { tankWedgeView, wedgeFinding } from "./tank-wedge-view.ts";

function shelf(name: string, runs: readonly number[], wanted: number): ShelfFacts {
  const sorted = [...runs].sort((a, b) => a - b);
  return {
    id: name,
    name,
    supply: { low: sorted[1]!, central: (sorted[9]! + sorted[10]!) / 2, high: sorted[18]! },
    runs,
    wanted,
    figures: { supply: `larder.${name}.supply`, wanted: null },
  };
}
const steady = (name: string, grown: number, wanted: number) => shelf(name, Array(20).fill(grown), wanted);

const anyShelf = fc
  .tuple(
    fc.array(fc.double({ min: 0, max: 300, noNaN: true }), { minLength: 20, maxLength: 20 }),
    fc.double({ min: 0, max: 300, noNaN: true }),
  )
  .map(([runs, wanted], i = 0) => shelf(`shelf ${i}`, runs, wanted));

test("short and not short add up to twenty runs, told with word and number", () => {
  const film = shelf("film on glass", [...Array(15).fill(20), ...Array(5).fill(40)], 30);
  expect(shortOf20(film)).toBe(15);
  expect(shortWords(film)).toBe("usually short, 15 of 20");
  expect(shortWords(steady("carrion", 2, 0))).toBe("nobody eats from it");
  expect(supplyWords(steady("film", 10, 0))).toBe("about 1 ration a day (1 to 1)");
});

test("within half a ration a shelf is even", () => {
  const half = RATION_MG_C / 2;
  expect(leaning(steady("film", 20, 20 - half + 0.1)).words).toBe("even");
  expect(leaning(steady("film", 20, 20 - half - 0.1)).kind).toBe("over");
  expect(leaning(steady("film", 20, 20 + half + 0.1)).kind).toBe("short");
});

test("in a tank that grows a ration in all, a shelf that wants more than it gets is no even one", () => {
  const small = { ...steady("hair algae", 0, 0.6), evenWithin: evenWithin(8.6) };
  expect(leaning(small)).toMatchObject({ kind: "short", words: "0.06 short" });
  expect(leaning({ ...steady("film", 0.2, 0.5), evenWithin: evenWithin(8.6) }).kind).toBe("even");
  expect(evenWithin(470)).toBe(RATION_MG_C / 2);
});

test("a pair's bracket spans what the middle of the runs has and what is wanted", () => {
  const { pairs, bare, grain } = shelfPairsView([
    steady("film", 60, 20),
    steady("hair algae", 10, 40),
    steady("film on sand", 0, 0),
    steady("carrion", 2, 1),
  ]);
  expect(grain).toBe("0.5 rations a day");
  expect(pairs.map(({ bracket }) => bracket)).toEqual([
    { from: 4, to: 12, words: "4 over" },
    { from: 2, to: 8, words: "3 short" },
    null,
  ]);
  expect(pairs[2]!.tooLittle).toEqual({ grown: true, wanted: true });
  expect(bare).toEqual(["film on sand"]);
});

test("the wedge ranks from most over to most short and loses no shelf", () => {
  fc.assert(
    fc.property(fc.array(anyShelf, { maxLength: 9 }), (shelves) => {
      const { columns, bare } = tankWedgeView(shelves);
      expect(columns.length + bare.length).toBe(shelves.length);
      const balances = columns.map((column) => leaning(column.shelf).mgC);
      expect(balances).toEqual(balances.toSorted((a, b) => b - a));
      for (const { over, short } of columns) {
        expect(grainsDrawn(over)).toBeLessThanOrEqual(14);
        expect(grainsDrawn(short)).toBeLessThanOrEqual(14);
        // Ten runs can't be over while eleven are short.
        expect(over.sure === 0 || short.sure === 0).toBe(true);
      }
    }),
  );
});

test("the wedge's finding names both ends, or says that all is even", () => {
  const view = tankWedgeView([
    steady("leftovers", 40, 10),
    steady("film", 20, 20),
    steady("hair algae", 5, 16),
  ]);
  expect(plain(wedgeFinding(view))).toBe("leftovers is 3 rations a day over, hair algae 1.1 short");
  expect(wedgeFinding(view, (shelf) => `larder.${shelf}.balance`)[1]).toEqual({
    text: "3 rations a day over",
    figure: "larder.leftovers.balance",
  });
  expect(plain(wedgeFinding(tankWedgeView([steady("film", 20, 20)])))).toBe(
    "each shelf grows about what is eaten",
  );
});
