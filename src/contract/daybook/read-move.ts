/** Animals moved to another tank of the store, or from one: the half of the tank in whose daybook it is logged. */
import { inWordsDate } from "../quantity/calendar.ts";
import type { Gather } from "./gather.ts";
import type { EntryBody } from "./kinds.ts";
import type { FoundTank } from "./other-tank.ts";

type Found = Extract<FoundTank, { kind: "one" }>;
interface Way extends Found {
  readonly field: "to" | "from";
}

export function readMove(gather: Gather): EntryBody<"move"> | undefined {
  const when = gather.when();
  const animal = gather.animal();
  const way = readWay(gather);
  const id = animal?.found?.id ?? null;
  const count = gather.counted("count", "lost", onRecord(gather, way, id));
  const condition = gather.choice("condition", ["lively", "usual", "weak"]);
  const despite = gather.reason("despite_gate");
  if (way !== undefined) judge(gather, way, id, despite ?? null);
  if (when === undefined || animal === undefined || way === undefined || count === undefined)
    return undefined;
  if (condition === undefined || despite === undefined || gather.doubts.length > 0) return undefined;
  for (const { kind, text } of way.receiving.said(id)) gather.said.push({ kind, text });
  const other = { id: way.tank.id, name: way.tank.name };
  const [to, from] = way.field === "to" ? [other, null] : [null, other];
  return {
    ...when,
    ...{ animal_text: animal.text, animal: id, count, condition, despite_gate: despite },
    ...{ to: to?.id ?? null, to_text: to?.name ?? null },
    ...{ from: from?.id ?? null, from_text: from?.name ?? null },
  };
}

/** Which tank, and whether they went there or came from it. */
function readWay(gather: Gather): Way | undefined {
  const [to, from] = [gather.text("to"), gather.text("from")];
  if (to === "" && from === "") {
    return gather.doubt("to", "MISSING", "nothing chosen. Which tank did they go to, or come from?");
  }
  if (to !== "" && from !== "") {
    const words = "choose one of the two: the tank they went to, or the one they came from";
    return gather.doubt("from", "CONFLICT", words, [{ label: "leave it empty", text: "" }]);
  }
  const field = to === "" ? "from" : "to";
  if (gather.context.findTank === undefined) {
    const words =
      "a move changes two daybooks, so it is logged by itself: on its page, over the API or by grazewell log. In a file, write a departure here and an addition there";
    return gather.doubt(field, "NOTFOUND", words);
  }
  const found = gather.context.findTank(gather.text(field));
  switch (found.kind) {
    case "one":
      return { ...found, field };
    case "itself":
      return gather.doubt(field, "CONFLICT", "this is the tank itself. Choose another");
    case "several":
      return gather.doubt(field, "AMBIG", "several tanks have that name. Which?", found.choices);
    case "none":
      return gather.doubt(field, "NOTFOUND", "there is no such tank here", found.choices);
  }
}

/** What the tank that they leave has of them; null where that can't be told. */
function onRecord({ on, context }: Gather, way: Way | undefined, id: string | null): number | null {
  if (way === undefined || id === null || on === null) return null;
  return (way.field === "to" ? context : way.tank).onRecord(id, on);
}

/** What can't be, and what the two tanks say. */
function judge(gather: Gather, way: Way, id: string | null, despite: string | null): void {
  const { tank, field, receiving } = way;
  const { on, context } = gather;
  if (on !== null && tank.notBefore !== null && on < tank.notBefore) {
    const words = `before the first day of ${tank.name}, ${inWordsDate(tank.notBefore)}`;
    gather.doubt("observed", "CONFLICT", words);
  }
  const knownAs = field === "to" ? context.knownAs : tank.knownAs;
  const now = id === null || on === null ? id : (knownAs?.(id, on) ?? id);
  if (now !== id && now !== null) {
    const found = context.findAnimal(now);
    const name = found.kind === "one" ? found.animal.commonName : now;
    const words = `the tank they leave has found out since that these are ${name}. Move them under that name`;
    gather.doubt("animal", "CONFLICT", words, [{ label: name, text: now }]);
  }
  if (receiving.gateNotMet !== null && (despite ?? "") === "") {
    const words = `${receiving.gateNotMet} Wait, or say why they move all the same`;
    gather.doubt("despite_gate", "CONFLICT", words);
  }
  const tolds = [
    [context.toldOn?.(id) ?? null, "this tank"],
    [tank.toldOn(id), tank.name],
  ] as const;
  for (const [told, name] of tolds) {
    if (told === null || on === null || on >= told) continue;
    const words = `before it was told what lives in ${name}, on ${inWordsDate(told)}: kept there as history, not counted again`;
    gather.say("observed", "ECHO", words);
  }
}
