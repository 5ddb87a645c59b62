/**
 * Contrast of one element's text by the WCAG 2 formula, from the colours that are painted: the first opaque ground
 * behind it, found by walking up its ancestors. Gives up (null) at a picture, a gradient or a see-through ground.
 */
import type { Page } from "playwright-core";

export interface Contrast {
  readonly ratio: number;
  /** 4.5, or 3 for large text. */
  readonly needed: number;
}

type Rgb = readonly [number, number, number];

function luminance(colour: Rgb): number {
  const [r, g, b] = colour.map((part) => {
    const share = part / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

export function ratio(one: Rgb, other: Rgb): number {
  const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

/** `rgb(1, 2, 3)` or `rgba(1, 2, 3, 0.5)` with its opacity. */
export function parseColour(text: string): { readonly rgb: Rgb; readonly alpha: number } | null {
  const parts = /^rgba?\(([\d.]+),\s*([\d.]+),\s*([\d.]+)(?:,\s*([\d.]+))?\)$/.exec(text);
  if (parts === null) return null;
  return { rgb: [Number(parts[1]), Number(parts[2]), Number(parts[3])], alpha: Number(parts[4] ?? 1) };
}

export async function contrastOf(page: Page, selector: string): Promise<Contrast | null> {
  const painted = await page.evaluate((wanted) => {
    const element = document.querySelector(wanted);
    if (element === null) return null;
    const style = getComputedStyle(element);
    const inSvg = element instanceof SVGElement;
    const grounds: { colour: string; picture: boolean }[] = [];
    for (let at: Element | null = element; at !== null; at = at.parentElement) {
      const { backgroundColor, backgroundImage } = getComputedStyle(at);
      grounds.push({ colour: backgroundColor, picture: backgroundImage !== "none" });
    }
    return {
      ink: inSvg ? style.fill : style.color,
      size: Number.parseFloat(style.fontSize),
      weight: Number(style.fontWeight),
      grounds,
    };
  }, selector);
  if (painted === null) return null;
  const ink = parseColour(painted.ink);
  if (ink === null || ink.alpha < 1) return null;
  for (const { colour, picture } of painted.grounds) {
    const ground = parseColour(colour);
    if (picture || ground === null) return null;
    if (ground.alpha === 0) continue;
    if (ground.alpha < 1) return null;
    // Large: 24 px, or 18.66 px where bold.
    const large = painted.size >= 24 || (painted.size >= 18.66 && painted.weight >= 700);
    return { ratio: ratio(ink.rgb, ground.rgb), needed: large ? 3 : 4.5 };
  }
  return null;
}

/** Borders of entries against the ground they stand on: 3 to 1 (WCAG 1.4.11). Buttons are told by their words. */
export async function borderFaults(page: Page): Promise<string[]> {
  const entries = await page.evaluate(() =>
    [...document.querySelectorAll("input[type=text], select, textarea")]
      .filter((element) => element.checkVisibility())
      .map((element) => {
        const grounds: string[] = [];
        for (let at = element.parentElement; at !== null; at = at.parentElement) {
          grounds.push(getComputedStyle(at).backgroundColor);
        }
        return { name: element.id, border: getComputedStyle(element).borderBottomColor, grounds };
      }),
  );
  return entries.flatMap(({ name, border, grounds }) => {
    const line = parseColour(border);
    const ground = grounds.map(parseColour).find((colour) => colour !== null && colour.alpha > 0);
    if (line === null || ground === undefined || ground === null)
      return [`border of ${name} can't be judged`];
    const measured = ratio(line.rgb, ground.rgb);
    return measured >= 3 ? [] : [`border of ${name}: contrast ${measured.toFixed(2)}`];
  });
}
