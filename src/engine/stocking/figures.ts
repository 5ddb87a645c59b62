/** Every number of a plan as a figure, besides the larder's: put together here. docs/model/stocking.md. */
import type { FigureScene } from "../larder/figures.ts";
import { needFigure } from "../larder/mouth-figures.ts";
import type { Figure } from "../types/figure.ts";
import { besideFigures } from "./beside-figures.ts";
import { checkFigures } from "./check-figures.ts";
import type { Plan } from "./plan-shape.ts";
import { countFigures } from "./wave-figures.ts";
import { supplyFigures } from "./wave-supply-figures.ts";
import { warmthOf } from "./waves.ts";

/** @param scene the larder on the plan's day; its table holds the supply's parameters too */
export function planFigures(plan: Plan, scene: FigureScene): Figure[] {
  const warmth = warmthOf(scene.facts);
  const hungry = plan.refused.filter(({ reasons }) => reasons.some(({ code }) => code === "starves"));
  const needy = new Set([
    ...plan.kinds.map(({ animal }) => animal),
    ...plan.fedByHand.map(({ animal }) => animal),
    ...hungry.map(({ animal }) => animal),
  ]);
  const needs = [...needy].map((animal) => needFigure(animal, warmth, scene));
  const need = (id: string) => needs.find((figure) => figure.id === `animal.${id}.need`) ?? null;
  const supplies = supplyFigures(plan, scene);
  return [
    ...needs,
    ...supplies,
    ...countFigures(plan, scene, supplies, need),
    ...besideFigures(plan, scene, need),
    ...checkFigures(plan),
  ];
}
