/**
 * A number of the engine's, as shown: a link to how it came about. Every such number on a page is one of these, so that
 * none is a dead end. Write the unit inside, so that the link reads as a sentence's own words: the two then also stay on
 * one line.
 */
import { type ComponentChildren, toChildArray } from "preact";
import { useContext } from "preact/hooks";
import { to } from "../page.ts";
import { TankId, WorkingOf } from "./tank-context.ts";
import { unitText } from "./text.ts";

interface QuantityProps {
  /** Id of the figure, as `TankAnswers.workings` has it: "larder.film_glass.supply". */
  readonly figure: string;
  /** Where the page speaks of no tank or of another one. */
  readonly tank?: string;
  readonly children: ComponentChildren;
}

export function Quantity({ figure, tank, children }: QuantityProps) {
  const around = useContext(TankId);
  const address = useContext(WorkingOf) ?? ofTank;
  return (
    <a class="quantity" data-figure={figure} href={address(tank ?? around, figure)}>
      {inSigns(children)}
    </a>
  );
}

function ofTank(tank: string | null, figure: string): string {
  if (tank === null) throw new Error(`Cannot show figure ${figure}: its working belongs to a tank, name one`);
  return to.working(tank, figure);
}

/** Number and unit may come as pieces of one text: it is joined first. What holds an element is left as it is. */
function inSigns(children: ComponentChildren): ComponentChildren {
  const pieces = toChildArray(children);
  return pieces.every((piece) => typeof piece !== "object") ? unitText(pieces.join("")) : children;
}
