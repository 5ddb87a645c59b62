/** What is turned away before a parser sees it. */

/** A picture or another binary file, by its first bytes as they look in text. */
export function isPicture(text: string): boolean {
  const start = text.slice(0, 512);
  return (
    start.includes("\0") ||
    /^.{0,2}PNG\r?\n|^GIF8|^.{0,8}JFIF|^%PDF|^PK[^\w\s:]/.test(start) ||
    start.split("\ufffd").length > 8
  );
}

/** Deepest nesting of brackets, over-counting those in quotes: a file that trips it by quotes is no tank file. */
export function deepestFlow(text: string): number {
  let depth = 0;
  let deepest = 0;
  for (let i = 0; i < text.length; i += 1) {
    const c = text.charCodeAt(i);
    if (c === 91 || c === 123) deepest = Math.max(deepest, ++depth);
    else if (c === 93 || c === 125) depth = Math.max(0, depth - 1);
  }
  return deepest;
}
