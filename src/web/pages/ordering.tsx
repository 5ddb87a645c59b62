/** The part of errands about the shop: what to ask for, by when, in which weather, and what is on order. */
import type { Ordering, Stray } from "../../answers/errands/ordering.ts";
import { counted, dateWords } from "../../answers/words.ts";
import type { ShopTerms } from "../../engine/types/tank.ts";
import { to } from "../page.ts";
import { Notice } from "../parts/notice.tsx";
import { Quantity } from "../parts/quantity.tsx";

export interface OrderingView {
  readonly tank: string;
  /** Null where no wave is planned. */
  readonly ordering: Ordering | null;
  readonly strays: readonly Stray[];
  /** Undefined where nothing was said of a shop. */
  readonly shop: ShopTerms | undefined;
}

export function OrderingPart({ tank, ordering, strays, shop }: OrderingView) {
  if (ordering === null && strays.length === 0) return null;
  return (
    <section id="order">
      <h2>To ask of the shop</h2>
      {strays.length === 0 ? null : <Strays strays={strays} />}
      {ordering === null ? null : (
        <>
          <Lines ordering={ordering} />
          {ordering.askBy === null ? null : (
            <p>
              Ask by <Quantity figure={ordering.askBy.figure}>{ordering.askBy.text}</Quantity>, and only if
              the gate holds that day. It is looked at again when they arrive.
            </p>
          )}
          {ordering.least === null || ordering.least.short === 0 ? null : (
            <p>
              The shop sends {ordering.least.heads} heads or more: {ordering.least.short} short. Fill it up
              with food or tests, or share the order; more animals than planned is no way to reach it.
            </p>
          )}
          <Weather shop={shop} />
          <p class="actions">
            <a class="action first" href={to.orderWave(tank, ordering.wave)}>
              Log an order for wave {ordering.wave}
            </a>
            <a class="action" href={to.acceptWave(tank, ordering.wave)}>
              They have arrived
            </a>
          </p>
        </>
      )}
      <p>
        <a href={to.shop(tank)}>How your shop sells and sends: packs, days, least order, weather</a>
      </p>
    </section>
  );
}

function Strays({ strays }: { readonly strays: readonly Stray[] }) {
  return (
    <Notice kind="look" title="On order, and not in the next wave">
      <ul>
        {strays.map(({ animal, name, heads, since, expectedOn }) => (
          <li key={animal}>
            {counted(heads, name)}, asked for on {dateWords(since)}
            {expectedOn === null ? "" : `, to come on ${dateWords(expectedOn)}`}: ask the shop to keep them
            until the plan has room.
          </li>
        ))}
      </ul>
    </Notice>
  );
}

function Lines({ ordering: { lines } }: { readonly ordering: Ordering }) {
  return (
    <ul class="errands">
      {lines.map(({ animal, name, onOrder, pack, ask, left, standIns }) => (
        <li key={animal}>
          {name}: ask for <Quantity figure={ask.figure}>{ask.text}</Quantity>
          {onOrder === 0 ? "" : `; ${onOrder} on order`}
          {pack === null ? "" : `; sold in packs of ${pack}`}
          {left === 0 ? "" : `; ${left} of the plan make no whole pack: share one, or leave them out`}.
          {standIns.length === 0
            ? null
            : ` Not to be had: ${standIns.map((one) => one.name).join(" or ")} eats much the same and fits; ask "What if" first.`}
        </li>
      ))}
    </ul>
  );
}

/** Where nobody said: what is usual; common practice, no source. */
const USUAL = { holdsBelowC: 5, holdsAboveC: 30 } as const;

function Weather({ shop }: { readonly shop: ShopTerms | undefined }) {
  const below = shop?.holdsBelowC ?? USUAL.holdsBelowC;
  const above = shop?.holdsAboveC ?? USUAL.holdsAboveC;
  const whose = shop?.holdsBelowC == null && shop?.holdsAboveC == null ? "usual" : "what your shop says";
  return (
    <p>
      Look at the forecast for the days on the way: below {below} °C or above {above} °C outside ({whose}),
      ask to have them held, and fetch them yourself where you can. Never have them left at the door.
    </p>
  );
}
