/** A tank's numbers behind one crisis list, on request: each opens its working. The list itself comes without them. */

import type { NumbersPart } from "../../answers/numbers-part.ts";
import type { CrisisId } from "../../answers/wrong/list-ids.ts";
import { CRISIS_LISTS } from "../../answers/wrong/lists.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { NumbersSection } from "./numbers-section.tsx";

interface NumbersView {
  readonly head: TankHead;
  readonly list: CrisisId;
  readonly parts: readonly NumbersPart[];
  /** Hours of oxygen are still being worked out: where to wait for them; null where they are there or not asked for. */
  readonly waitFor: string | null;
}

export function wrongNumbersPage({ head, list, parts, waitFor }: NumbersView): Page {
  const { see } = CRISIS_LISTS[list];
  return {
    title: `${see}: numbers for ${head.name}`,
    tank: head,
    here: null,
    body: (
      <div class="behind-list">
        <p class="kind">Numbers behind a list</p>
        <h1>{see}</h1>
        <p>
          First the list: <a href={to.wrongList(list, head.id)}>what to do</a>. These numbers are for{" "}
          {head.name}; estimates, their range in brackets. A test, and the animals, overrule them.
        </p>
        {waitFor === null ? null : (
          <div data-await data-src={`${waitFor}?part=1`}>
            <p role="status">Hours of oxygen are being worked out, which takes a few seconds.</p>
            <p>
              <a href={`${waitFor}?wait=1`}>Wait for them</a>
            </p>
          </div>
        )}
        {parts.map((part) => (
          <NumbersSection key={part.title} part={part} />
        ))}
        {parts.length === 0 && waitFor === null ? (
          <p>Nothing of this tank's volume and facts bears on this list.</p>
        ) : null}
      </div>
    ),
  };
}

/** Hours of oxygen alone, for the slot that waited for them. */
export function wrongOxygenPage(head: TankHead, part: NumbersPart | null): Page {
  return {
    title: `Oxygen with all pumps off: ${head.name}`,
    tank: head,
    here: null,
    body:
      part === null ? (
        <p>It holds no water yet, so no oxygen can be told.</p>
      ) : (
        <NumbersSection part={part} />
      ),
  };
}
