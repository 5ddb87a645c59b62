/** Growths scored against their anchors, and signs that are no growth. */
import { GROWTHS } from "../../engine/types/tank.ts";
import { readCoverage } from "../quantity/coverage.ts";
import { isKept } from "../quantity/outcome.ts";
import { parseAmount } from "../quantity/parse.ts";
import { decimalSign } from "../quantity/preferences.ts";
import type { Gather } from "./gather.ts";
import { GROWTH_ANCHORS, SCORE_WORDS, SCORES, type Score, scoreOfShare } from "./growth-anchors.ts";
import { SIGNS } from "./kinds/sighting.ts";
import type { EntryBody } from "./kinds.ts";
import { readHoursFromLightsOut, readKinds } from "./read-numbers.ts";

export function readGrowth(gather: Gather): EntryBody<"growth"> | undefined {
  const growth = gather.choice("growth", GROWTHS);
  const score = readScore(gather);
  const traits = gather.traits();
  const when = gather.when();
  if (growth == null || score === undefined || traits === undefined || when === undefined) return undefined;
  gather.say("score", "ECHO", `${GROWTH_ANCHORS[growth].label}: ${GROWTH_ANCHORS[growth].anchors[score]}`);
  return { ...when, growth, score, score_text: gather.text("score"), traits };
}

/** 0 to 4, a score's word, or how much of the surface: "30 %", "all over". */
function readScore(gather: Gather): Score | undefined {
  const typed = gather.text("score");
  const choices = SCORE_WORDS.map((word, score) => ({ label: `${score} ${word}`, text: String(score) }));
  if (typed === "") {
    const words = "nothing entered. Enter 0 to 4, a word such as thin, or a share such as 30 %";
    return gather.doubt("score", "MISSING", words, choices);
  }
  const word = (SCORE_WORDS as readonly string[]).indexOf(typed.toLowerCase().replace(/^\d\s+/, ""));
  const named = SCORES[word];
  if (named !== undefined) return named;
  const { preferences } = gather.context;
  const parsed = parseAmount(typed, decimalSign(preferences.locale));
  const [only] = parsed?.candidates ?? [];
  if (parsed?.unit === null && only !== undefined && only.low >= 0) {
    const { low, high } = only;
    const exact = SCORES.find((score) => score === low && low === high);
    if (exact !== undefined) return exact;
    if (low !== high && SCORES.some((score) => score === low) && SCORES.some((score) => score === high)) {
      const ends = choices.filter(({ text }) => Number(text) >= low && Number(text) <= high);
      return gather.doubt("score", "AMBIG", `${ends.map(({ label }) => label).join(" or ")}?`, ends);
    }
    if (low > 1 && high <= 100) {
      const share = `${typed.replace(/\s*\(checked\)$/i, "")} %`;
      const words = `a score is 0 to 4. Is it ${share} of the surface?`;
      return gather.doubt("score", "AMBIG", words, [{ label: share, text: share }, ...choices]);
    }
  }
  const coverage = readCoverage(typed, { preferences, label: gather.label("score"), unit: "%" });
  const read = gather.take("score", coverage);
  if (read === undefined) return undefined;
  const score = scoreOfShare(read.share.central);
  if (isKept(coverage)) gather.say("score", "ECHO", `kept as ${score}, ${SCORE_WORDS[score]}`);
  return score;
}

export function readSign(gather: Gather): EntryBody<"sign"> | undefined {
  const sign = gather.choice("sign", SIGNS);
  const named = gather.text("animal") === "" ? null : gather.animal();
  const heads = gather.text("count") === "" ? { count: null } : gather.heads("count", "other");
  const kinds = readKinds(gather);
  const hours = readHoursFromLightsOut(gather);
  const traits = gather.traits();
  const when = gather.when();
  if (sign == null || named === undefined || heads === undefined || kinds === undefined) return undefined;
  if (hours === undefined || traits === undefined || when === undefined) return undefined;
  return {
    ...when,
    sign,
    animal_text: named?.text ?? null,
    animal: named?.found?.id ?? null,
    count: heads.count,
    kinds_seen: kinds,
    hours_from_lights_out: hours,
    traits,
  };
}
