/** What a parser finds wrong with the writing itself, in words that say where to look. */
import type { YAMLError } from "yaml";
import type { Fault } from "./document.ts";

/** One slip can set off a hundred complaints; the first ones name it. */
const MOST = 10;

const WORDS: Readonly<Record<string, string>> = {
  TAB_AS_INDENT: "a tab stands where spaces belong",
  MULTIPLE_DOCS: "there is a second document; keep one",
  BAD_ALIAS: "a reference to another place is not taken; write it out",
  BAD_INDENT: "the spaces in front don't fit the lines above",
  MISSING_CHAR: "a colon, a comma, a bracket or a closing quote is missing",
  MULTILINE_IMPLICIT_KEY: "a colon is missing, or a quote that opens never closes",
  BLOCK_IN_FLOW: "a bracket that opens never closes",
  TAG_RESOLVE_FAILED: "a tag is not taken; leave it out",
  NON_STRING_KEY: "a name must be text",
};
const OTHERWISE =
  "can't be read as YAML or JSON. Look at the spaces in front, the colons, quotes and brackets";

export function syntaxFaults(
  errors: readonly YAMLError[],
  lineAt: (offset: number) => number | null,
): Fault[] {
  const lines = new Set<number | null>();
  return errors
    .map((error): Fault => {
      const line = lineAt(error.pos[0]);
      const words = WORDS[error.code] ?? OTHERWISE;
      return { path: [], line, typed: null, message: { kind: "FORMAT", text: `Tank file: ${words}` } };
    })
    .filter(({ line }) => !lines.has(line) && lines.add(line))
    .slice(0, MOST);
}
