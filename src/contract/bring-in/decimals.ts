/**
 * Decimal signs in a file: found in all its figures together. Where they show the sign, a figure is written with the
 * keeper's own, its thousands taken out, so that the kept text means the same ever after; where they don't, and a comma or
 * point before three digits could be either, it is asked once.
 */
import { decimalSign, type Preferences } from "../quantity/preferences.ts";
import type { Steps } from "../steps.ts";
import { type Answers, answered, ask, done, type FileQuestion, type Step } from "./asked.ts";

const CELLS_A_STEP = 2_000;

export interface FigureHabits {
  /** The file's; null where its figures don't show one, and need none. */
  readonly decimal: "." | "," | null;
  readonly keepers: "." | ",";
  readonly said: string | null;
}

const FIGURE = /^[<>≤≥~]?\s*[+-]?\d[\d.,' \u00a0\u202f]*/;

export function* figureHabits(
  cells: Iterable<string>,
  { locale }: Preferences,
  answers: Answers,
): Steps<Step<FigureHabits>> {
  const keepers = decimalSign(locale);
  const seen = { ".": 0, ",": 0 };
  let open: string | null = null;
  let looked = 0;
  for (const raw of cells) {
    if (looked++ % CELLS_A_STEP === 0) yield;
    const figure = FIGURE.exec(raw.trim())?.[0].replace(/[^\d.,]/g, "");
    if (figure === undefined) continue;
    const sign = signOf(figure);
    if (sign === "either") {
      if (!figure.includes(keepers)) open ??= raw.trim();
    } else if (sign !== null) seen[sign] += 1;
  }
  if (seen["."] > 0 && seen[","] > 0)
    return done({ decimal: null, keepers, said: "decimal points and commas both" });
  const evidence = seen["."] > 0 ? "." : seen[","] > 0 ? "," : null;
  if (evidence !== null) return done({ decimal: evidence, keepers, said: said(evidence) });
  if (open === null) return done({ decimal: null, keepers, said: null });
  const question: FileQuestion = {
    name: "decimal",
    kind: "AMBIG",
    text: `Figures such as "${open}": which sign stands before the decimals? One answer for the whole file`,
    choices: [
      { label: `a comma: ${open} is ${asPoint(open, ",")}`, value: "comma" },
      { label: `a point: ${open} is ${asPoint(open, ".")}`, value: "point" },
    ],
  };
  const chosen = answered(answers, question);
  if (chosen === null) return ask(question);
  const decimal = chosen === "comma" ? "," : ".";
  return done({ decimal, keepers, said: said(decimal) });
}

const said = (decimal: "." | ","): string => (decimal === "," ? "decimal comma" : "decimal point");

/** The decimal sign that a figure shows; `either` where it could be thousands; null where it has none. */
function signOf(figure: string): "." | "," | "either" | null {
  const [points, commas] = [figure.split(".").length - 1, figure.split(",").length - 1];
  if (points === 0 && commas === 0) return null;
  if (points > 0 && commas > 0) return figure.lastIndexOf(".") > figure.lastIndexOf(",") ? "." : ",";
  const sign = points > 0 ? "." : ",";
  const other = sign === "." ? "," : ".";
  if (points + commas > 1) return other;
  return /^[1-9]\d{0,2}[.,]\d{3}$/.test(figure) ? "either" : sign;
}

const asPoint = (figure: string, decimal: "." | ","): string =>
  figure.replaceAll(decimal === "." ? "," : ".", "").replace(",", ".");

/** The cell with its figures in the keeper's sign. Only what is in the way is changed. */
export function figureText(cell: string, { decimal, keepers }: FigureHabits): string {
  if (decimal === null) return cell;
  const group = decimal === "." ? "," : ".";
  return cell.replace(/\d[\d.,]*\d/g, (figure) => {
    const plain = new RegExp(`^\\d{1,3}(?:\\${group}\\d{3})+(?:\\${decimal}\\d+)?$`).test(figure)
      ? figure.replaceAll(group, "")
      : figure;
    if (plain.includes(group)) return figure;
    return decimal === keepers ? plain : plain.replace(decimal, keepers);
  });
}
