/**
 * A number of the engine's, as shown: a link to how it came about. Every such number on a page is one of these, so that
 * none is a dead end. Write the unit inside, so that the link reads as a sentence's own words.
 */
import type { ComponentChildren } from "preact";
import { useContext } from "preact/hooks";
import { to } from "../page.ts";
import { TankId, WorkingOf } from "./tank-context.ts";

interface QuantityProps {
  /** Id of the figure, as `TankAnswers.workings` has it: "larder.film_glass.supply". */
  readonly figure: string;
  /** Where the page speaks of no tank or of another one. */
  readonly tank?: string;
  readonly children: ComponentChildren;
}

export function Quantity({ figure, tank, children }: QuantityProps) {
  const around = useContext(TankId);
  const address = useContext(WorkingOf) ?? to.working;
  const id = tank ?? around;
  if (id === null) throw new Error(`Cannot show figure ${figure}: its working belongs to a tank, name one`);
  return (
    <a class="quantity" data-figure={figure} href={address(id, figure)}>
      {children}
    </a>
  );
}
