/**
 * How sure a figure is: as its weakest part, down the whole chain. Parameters and facts of animals by their evidence,
 * assumed inputs as judgement, linked figures by their own weakest part.
 */
import { animalById } from "../../catalogue/index.ts";
import type { Confidence, Figure } from "../../engine/types/figure.ts";
import type { Evidence } from "../../engine/types/parameter.ts";
import { animalFigure, confidenceOfBasis } from "./animal-facts.ts";
import { TABLE } from "./table.ts";

const ORDER: readonly Confidence[] = ["measured", "read", "computed", "judgement"];
const OF_EVIDENCE: Readonly<Record<Evidence, Confidence>> = {
  read: "read",
  computed: "computed",
  memory: "judgement",
  judgement: "judgement",
  backfitted: "judgement",
};

function weakest(parts: readonly Confidence[]): Confidence {
  return ORDER[Math.max(0, ...parts.map((part) => ORDER.indexOf(part)))]!;
}

/** The figures with the confidence of their weakest part. */
export function withConfidence(figures: readonly Figure[]): Figure[] {
  const byId = new Map(figures.map((figure) => [figure.id, figure]));
  const known = new Map<string, Confidence>();
  const sureness = (figure: Figure): Confidence => {
    const had = known.get(figure.id);
    if (had !== undefined) return had;
    // Against a ring of links, which a test forbids: the figure's own claim stands meanwhile.
    known.set(figure.id, figure.working.confidence);
    const { confidence, inputs, parameters, animals } = figure.working;
    const made = weakest([
      confidence,
      ...parameters.map(({ symbol }) => OF_EVIDENCE[TABLE.get(symbol)?.evidence ?? "judgement"]),
      ...animals.map((id) => confidenceOfBasis(animalById.get(id)?.basis["diet"])),
      ...inputs.map(({ origin, figure: link }): Confidence => {
        const linked = link === undefined ? null : (byId.get(link) ?? animalFact(link));
        if (linked !== null) return sureness(linked);
        return origin === "assumed" ? "judgement" : "measured";
      }),
    ]);
    known.set(figure.id, made);
    return made;
  };
  return figures.map((figure) => ({
    ...figure,
    working: { ...figure.working, confidence: sureness(figure) },
  }));
}

/** A fact of the catalogue by its figure's id; null for any other id. */
export function animalFact(id: string): Figure | null {
  const [, animalId = "", fact = ""] = /^(?:today\.|what_if\.)?animal\.([^.]+)\.([^.]+)$/.exec(id) ?? [];
  const animal = animalById.get(animalId);
  return animal === undefined ? null : animalFigure(animal, fact);
}
