/** The way from a dangerous reading to what to do first: the list that fits, or all of them. */
import { listOfDanger } from "../../answers/wrong/list-of-danger.ts";
import { to } from "../page.ts";

interface FirstStepsProps {
  readonly tank: string;
  /** As readings are named. */
  readonly quantity: string;
  readonly cold: boolean;
}

export function FirstSteps({ tank, quantity, cold }: FirstStepsProps) {
  const list = listOfDanger(quantity, cold);
  return <a href={list === null ? to.wrong(tank) : to.wrongList(list, tank)}>What to do first</a>;
}
