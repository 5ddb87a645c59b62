/** Topping up in few orders, and the way down: fewer mouths, or food by hand. */
import { seenOfFilm, topUpWhy } from "../../answers/heads/advice.ts";
import { counted, dateWords, dryFood } from "../../answers/words.ts";
import type { HeadsOutput } from "../../contract/output/heads.ts";
import { WORTH } from "../../engine/heads/top-up.ts";
import { addDays } from "../../engine/stocking/suitability.ts";
import { SHELF_NAME, type ShelfId } from "../../engine/types/shelf.ts";
import { Quantity } from "../parts/quantity.tsx";
import { capital } from "../parts/text.ts";

export function Orders({ output }: { readonly output: HeadsOutput }) {
  const { orders, held_back: held } = output;
  return (
    <section id="topping-up">
      <h2>Topping up</h2>
      {orders.length === 0 ? (
        <p>Nobody needs to be ordered: no shelf runs short of mouths within half a year.</p>
      ) : null}
      {orders.map((order) => (
        <div key={order.latest}>
          <p>
            {order.worth
              ? `An order worth sending, by ${dateWords(order.latest)}:`
              : `Not worth a parcel yet: it waits for ${WORTH.heads} heads, or until ${dateWords(addDays(order.latest, -WORTH.days))}:`}
          </p>
          <ul>
            {order.items.map(({ id, name, count, why, shelf, latest, figure }) => (
              <li key={id}>
                <Quantity figure={figure}>{counted(count, name)}</Quantity>: {topUpWhy(why, shelf)}, by{" "}
                {dateWords(latest)}.
              </li>
            ))}
          </ul>
        </div>
      ))}
      {held.length === 0 ? null : (
        <>
          <p>Not ordered now:</p>
          <ul>
            {held.map(({ id, name, why }) => (
              <li key={id}>
                {capital(name)}: {why}
              </li>
            ))}
          </ul>
        </>
      )}
      <p>Nothing is ordered beyond what 15 of 20 runs of the larder feed, nor beyond room and company.</p>
    </section>
  );
}

export function WayDown({ output }: { readonly output: HeadsOutput }) {
  const seen = seenOfFilm(output);
  if (output.way_down.length === 0) {
    return seen === null ? null : (
      <section id="way-down">
        <h2>The way down</h2>
        <p>{seen} Nobody here lives on it enough to go short.</p>
      </section>
    );
  }
  return (
    <section id="way-down">
      <h2>The way down</h2>
      {seen === null ? null : <p>{seen}</p>}
      <ul>
        {output.way_down.map(({ id, name, heads, shelf, fed_share, dry_feed_mg_per_day, fewer, figures }) => (
          <li key={id}>
            {counted(heads, name)}
            {shelf === null
              ? heads === 1
                ? " gets "
                : " get "
              : `: ${SHELF_NAME[shelf as ShelfId]} falls short, `}
            {shelf === null ? null : heads === 1 ? "it gets " : "they get "}
            <Quantity figure={figures.fed}>{Math.round(100 * fed_share)} %</Quantity> of the need. By hand:{" "}
            <Quantity figure={figures.food}>{dryFood(dry_feed_mg_per_day)} of dry food a day</Quantity>
            {fewer === 0 ? null : (
              <>
                , or a new home for <Quantity figure={figures.fewer}>{fewer}</Quantity>
              </>
            )}
            .
          </li>
        ))}
      </ul>
      <p>
        Return them to a shop, or give them to another keeper or tank. Never release animals or tank water
        into the wild.
      </p>
    </section>
  );
}
