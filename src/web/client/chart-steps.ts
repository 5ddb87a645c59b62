/**
 * Stepping through a chart by keys or taps: each value is announced and marked in the drawing. What is stepped through
 * stands in the page (web/charts/steps.ts says how); nothing is worked out here.
 */
import type { Step } from "../charts/steps.ts";

/** Where each stepper stands; none at first: the sentence there says how to step. */
const places = new WeakMap<Element, number>();
const read = new WeakMap<Element, readonly Step[]>();

function reveal(): void {
  for (const stepper of document.querySelectorAll<HTMLElement>("[data-chart-stepper][hidden]")) {
    stepper.hidden = false;
  }
}

function stepsOf(chart: Element): readonly Step[] {
  const known = read.get(chart);
  if (known !== undefined) return known;
  const steps = JSON.parse(chart.querySelector("[data-chart-steps]")?.textContent ?? "[]") as readonly Step[];
  read.set(chart, steps);
  return steps;
}

function stepTo(chart: Element, wanted: number): void {
  const steps = stepsOf(chart);
  const place = Math.min(steps.length - 1, Math.max(0, wanted));
  const step = steps[place];
  if (step === undefined) return;
  places.set(chart, place);
  const says = chart.querySelector("[data-chart-says]");
  if (says !== null) says.textContent = `${step.label}: ${step.text}`;
  for (const mark of chart.querySelectorAll("[data-step-mark]")) {
    const visibility = mark.getAttribute("data-step-mark") === String(place) ? "visible" : "hidden";
    // Of some hundred marks two change: the others need no new style.
    if (mark.getAttribute("visibility") !== visibility) mark.setAttribute("visibility", visibility);
  }
}

/** From nowhere, the first step leads to the first value, and one back to the last. */
function stepBy(chart: Element, by: number): void {
  const place = places.get(chart);
  if (place !== undefined) stepTo(chart, place + by);
  else stepTo(chart, by > 0 ? 0 : stepsOf(chart).length - 1);
}

const KEYS: Readonly<Record<string, (chart: Element) => void>> = {
  ArrowRight: (chart) => stepBy(chart, 1),
  ArrowLeft: (chart) => stepBy(chart, -1),
  Home: (chart) => stepTo(chart, 0),
  End: (chart) => stepTo(chart, stepsOf(chart).length - 1),
};

document.addEventListener("click", ({ target }) => {
  const button = target instanceof Element ? target.closest<HTMLElement>("[data-step-by]") : null;
  const chart = button?.closest("[data-chart]");
  if (button !== null && chart != null) stepBy(chart, Number(button.dataset["stepBy"]));
});

document.addEventListener("keydown", (event) => {
  if (event.ctrlKey || event.metaKey || event.altKey || event.shiftKey) return;
  const stepper = event.target instanceof Element ? event.target.closest("[data-chart-stepper]") : null;
  const chart = stepper?.closest("[data-chart]");
  const act = KEYS[event.key];
  if (chart == null || act === undefined) return;
  event.preventDefault();
  act(chart);
});

document.addEventListener("grazewell:filled", reveal);
reveal();
