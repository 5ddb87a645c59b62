/**
 * Joins the style sheets into one: each `@import "./x.css"` is replaced by that file, in order, once. A `url()` that
 * begins with a package's name ("@fontsource-variable/...") becomes what `addressOf` says of the file; the caller
 * copies it there. Comments and the spaces of the layout go.
 */
import { readFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";

export interface JoinedStyles {
  readonly css: string;
  /** Files that the sheet points to, in the order met: fonts. */
  readonly files: readonly string[];
}

const STYLE_INDEX = resolve(import.meta.dirname, "../src/web/style/index.css");
const PACKAGES = resolve(import.meta.dirname, "../node_modules");

/** `addressOf` is given a file of a package and says under what address the page will find it. */
export function joinStyles(addressOf: (file: string) => string): JoinedStyles {
  const files: string[] = [];
  const css = withImports(STYLE_INDEX).replaceAll(/url\("(@[^"]+)"\)/g, (_, inPackage: string) => {
    const file = join(PACKAGES, inPackage);
    if (!files.includes(file)) files.push(file);
    return `url("${addressOf(file)}")`;
  });
  return { css: squeezed(css), files };
}

function withImports(file: string): string {
  return readFileSync(file, "utf8").replaceAll(/^@import "(\.[^"]+)";$/gm, (_, beside: string) =>
    withImports(join(dirname(file), beside)),
  );
}

/** Only what is certain to mean the same: comments, indents, and spaces about braces and at line ends. */
function squeezed(css: string): string {
  return css
    .replaceAll(/\/\*[\s\S]*?\*\//g, "")
    .replaceAll(/\s*\n\s*/g, " ")
    .replaceAll(/\s*([{};])\s*/g, "$1")
    .replaceAll(/;\}/g, "}")
    .trim();
}
