/**
 * A quarantine or a fallow tank that began or ended: kept as a change of another kind, "quarantine: 2 clownfish",
 * "quarantine ended", "fallow", "fallow ended". Any other text is none.
 */
export interface Apart {
  readonly what: "quarantine" | "fallow";
  readonly step: "started" | "ended";
  /** What was said besides: who is in quarantine. */
  readonly words: string;
}

const SAID = /^\s*(quarantine|fallow)(?![\w-])(.*)$/i;
const ENDED = /(?:^|[\s:,;])(?:ended|over|done|finished)(?![\w-])/i;

export function apartIn(text: string): Apart | null {
  const [, what = "", rest = ""] = SAID.exec(text) ?? [];
  if (what === "") return null;
  const ended = ENDED.test(rest);
  const words = rest
    .replace(ENDED, " ")
    .replaceAll(/\b(?:started|begun|began|period|tank)\b/gi, " ")
    .replace(/^[\s:,;.-]+/, "")
    .replaceAll(/\s+/g, " ")
    .trim();
  return { what: what.toLowerCase() as Apart["what"], step: ended ? "ended" : "started", words };
}
