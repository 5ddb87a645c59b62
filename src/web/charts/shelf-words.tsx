/** A shelf's sentences with their figures as links, and the table that stands behind the larder's charts. */
import { rations, rationsADay } from "../../answers/words.ts";
import { Quantity } from "../parts/quantity.tsx";
import type { TableProps } from "../parts/table.tsx";
import { leaning, type ShelfFacts, shortOf20, shortWords, supplyWords } from "./shelf.ts";
import type { Step } from "./steps.ts";

function Supply({ shelf }: { readonly shelf: ShelfFacts }) {
  return <Quantity figure={shelf.figures.supply}>{supplyWords(shelf)}</Quantity>;
}

function Wanted({ shelf }: { readonly shelf: ShelfFacts }) {
  const words = rationsADay(shelf.wanted);
  return shelf.figures.wanted === null ? words : <Quantity figure={shelf.figures.wanted}>{words}</Quantity>;
}

/** "Grows about 3 rations a day (2 to 5); those that eat there want 6: usually short, 15 of 20." */
export function ShelfSentence({ shelf }: { readonly shelf: ShelfFacts }) {
  if (shelf.wanted === 0) {
    return (
      <>
        Grows <Supply shelf={shelf} />; {shortWords(shelf)}.
      </>
    );
  }
  return (
    <>
      Grows <Supply shelf={shelf} />; those that eat there want <Wanted shelf={shelf} />: {shortWords(shelf)}.
    </>
  );
}

export function shelfStep(shelf: ShelfFacts): Step {
  return {
    label: shelf.name,
    text: `grows ${supplyWords(shelf)}, wanted ${rationsADay(shelf.wanted)}, ${leaning(shelf).words}; ${shortWords(shelf)}`,
  };
}

export function shelfTable(shelves: readonly ShelfFacts[]): TableProps {
  return {
    caption: "Rations a day, shelf by shelf; the range holds 18 of 20 runs",
    columns: [
      { name: "shelf" },
      { name: "grown", numeric: true },
      { name: "range", numeric: true },
      { name: "wanted", numeric: true },
      { name: "balance", numeric: true },
      { name: "runs short", numeric: true },
    ],
    rows: shelves.map((shelf) => [
      shelf.name,
      <Quantity key="grown" figure={shelf.figures.supply}>
        {rations(shelf.supply.central)}
      </Quantity>,
      `${rations(shelf.supply.low)} to ${rations(shelf.supply.high)}`,
      shelf.figures.wanted === null ? (
        rations(shelf.wanted)
      ) : (
        <Quantity key="wanted" figure={shelf.figures.wanted}>
          {rations(shelf.wanted)}
        </Quantity>
      ),
      leaning(shelf).words,
      shelf.wanted === 0 ? "nobody eats" : `${shortOf20(shelf)} of 20`,
    ]),
  };
}
