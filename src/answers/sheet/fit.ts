/**
 * How much of each wave fits the sheet: from generous to scant, the first measure by which all waves together take no
 * more lines than a column of the shorter page has. Limits: counts letters, knows no type; the paper's check measures.
 */

/** Entries a wave shows at most. */
export interface WaveMeasure {
  readonly animals: number;
  readonly conditions: number;
}

export interface WaveTexts {
  readonly animals: readonly string[];
  readonly conditions: readonly string[];
  readonly stopIf: string | null;
}

const MEASURES: readonly WaveMeasure[] = [
  { animals: 12, conditions: 6 },
  { animals: 8, conditions: 5 },
  { animals: 6, conditions: 4 },
  { animals: 4, conditions: 3 },
  { animals: 3, conditions: 2 },
  { animals: 2, conditions: 1 },
];

/** Lines of the left column on a Letter page, and letters of a line: whole, and where two names share it. */
const LINES = 44;
const LETTERS = 76;
const LETTERS_OF_NAME = 30;
/** Heading of a wave with its white, "Only if", "and more". */
const HEADING_LINES = 2;

/** How many waves, and how much of each. */
export function measureFor(waves: readonly WaveTexts[]): WaveMeasure & { readonly waves: number } {
  for (let count = waves.length; count > 1; count -= 1) {
    const shown = waves.slice(0, count);
    const fits = MEASURES.find((measure) => lines(shown, measure) <= LINES);
    if (fits !== undefined) return { ...fits, waves: count };
  }
  return {
    ...(MEASURES.find((measure) => lines(waves.slice(0, 1), measure) <= LINES) ?? MEASURES.at(-1)!),
    waves: 1,
  };
}

const lines = (waves: readonly WaveTexts[], measure: WaveMeasure): number =>
  waves.reduce((sum, wave) => sum + linesOf(wave, measure), 0);

function linesOf({ animals, conditions, stopIf }: WaveTexts, measure: WaveMeasure): number {
  const told =
    conditions.slice(0, measure.conditions).join("; ").length + "Only if ; and 9 more: see the page.".length;
  const names = animals
    .slice(0, measure.animals)
    .reduce((sum, name) => sum + Math.ceil((name.length + 2) / LETTERS_OF_NAME), 0);
  const stop = stopIf === null ? 1 : Math.ceil((stopIf.length + "Stop if .".length) / LETTERS);
  return HEADING_LINES + Math.ceil(told / LETTERS) + Math.ceil((names + 1) / 2) + stop;
}
