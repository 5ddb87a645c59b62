/**
 * Feeding: what a day's feed brings and where it goes, what the fish need, what portions hold, fasting days, who of the crew
 * needs food by hand, and leaving home.
 */
import type { Feeding } from "../../answers/feeding/feeding.ts";
import { plain } from "../../answers/sentence.ts";
import type { TankAnswers } from "../../answers/tank-answers.ts";
import { dryFood } from "../../answers/words.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { Quantity } from "../parts/quantity.tsx";
import { NumbersSection } from "./numbers-section.tsx";
import { Sentence } from "./sentence.tsx";

type ByHand = TankAnswers["waves"]["fed_by_hand"];

interface FeedingView {
  readonly head: TankHead;
  readonly feeding: Feeding;
  /** Null while the plan is being worked out. */
  readonly byHand: ByHand | null;
  /** What an animal is fed by hand, of the catalogue. */
  readonly foodOf: (animal: string) => string | null;
}

export function feedingPage({ head, feeding, byHand, foodOf }: FeedingView): Page {
  const own = to.tank(head.id, "feeding");
  return {
    title: `${plain(feeding.lead).replace(/\.$/, "")}: ${head.name}`,
    tank: head,
    here: "feeding",
    body: (
      <>
        <h1>Feeding</h1>
        <p class="finding">
          <Sentence of={feeding.lead} />
        </p>
        <p>
          <a href={to.holiday(head.id)}>Leaving home? The page for a sitter</a>
        </p>
        {feeding.parts.map((part) => (
          <NumbersSection key={part.title} part={part} />
        ))}
        <section>
          <h2>Fed by hand</h2>
          {byHand === null ? (
            <div data-await data-src={`${own}?part=1`}>
              <p role="status">Whom the larder can't feed is being worked out, which takes a few seconds.</p>
              <p>
                <a href={`${own}?wait=1`}>Wait for it</a>
              </p>
            </div>
          ) : (
            <HandFed byHand={byHand} foodOf={foodOf} tank={head.id} />
          )}
        </section>
        <h2>Another day, another food</h2>
        <p>
          Reckon a <a href={to.sum(head.id, "portion")}>portion</a> or{" "}
          <a href={to.sum(head.id, "fish-food")}>food for fish</a> of your own; see weeks of more or less feed
          in <a href={to.tank(head.id, "what-if")}>What if</a>;{" "}
          <a href={to.question(head.id, 6)}>change what you said of feeding</a>.
        </p>
      </>
    ),
  };
}

/** The part alone, for the slot that waited for the plan. */
export function handFedPage({
  head,
  byHand,
  foodOf,
}: Omit<FeedingView, "feeding"> & { readonly byHand: ByHand }): Page {
  return {
    title: `Fed by hand: ${head.name}`,
    tank: head,
    here: "feeding",
    body: <HandFed byHand={byHand} foodOf={foodOf} tank={head.id} />,
  };
}

function HandFed({
  byHand,
  foodOf,
  tank,
}: {
  readonly byHand: ByHand;
  readonly foodOf: FeedingView["foodOf"];
  readonly tank: string;
}) {
  if (byHand.length === 0)
    return (
      <p>
        No animal of the crew needs food by hand: what grows and falls to the floor feeds them.{" "}
        <a href={to.tank(tank, "larder")}>Who eats what</a>
      </p>
    );
  return (
    <>
      <ul>
        {byHand.map(({ id, name, standing, dry_feed_mg_per_day, figures }) => (
          <li key={id}>
            <Quantity figure={figures.dry_feed}>{dryFood(dry_feed_mg_per_day)}</Quantity> of dry food a day
            for the {name}: {FED[standing]}
            {foodOf(id) === null ? "" : ` (${foodOf(id)})`}.
          </li>
        ))}
      </ul>
      <p class="note">
        Seaweed is clipped where they sit; fine food goes by a pipette in front of them, pumps off for ten
        minutes: dry hands on the plug. Count it to the day's feed: it ends in the same water.
      </p>
    </>
  );
}

const FED = {
  resident: "those that live here would go short",
  wished: "those you wish for would go short",
  planned: "they go short once all have come",
} as const;
