/** Sentences about heads: the same words on the page, in the advice and on the command line. */
import type { KindOutput } from "../../contract/output/heads.ts";
import { type Sentence, told } from "../sentence.ts";
import { chance, counted, dateWords } from "../words.ts";

type Band = KindOutput["living"];

/** "3 to 5", "4" */
export const bandWords = ({ low, high }: Pick<Band, "low" | "high">): string =>
  low === high ? `${low}` : `${low} to ${high}`;

const of20Likely = ({ living_of_20, living }: KindOutput): number =>
  living_of_20.filter((heads) => heads === living.likely).length;

/** "5 trochus snails came; 3 to 5 live, most likely 4 (about even, 9 of 20)." */
export function livingSentence(kind: KindOutput): Sentence {
  const { came, name, living, figures } = kind;
  const some: Sentence = [told(counted(came, name), figures.came), " came; "];
  if (living.low === living.high) {
    const { likely } = living;
    const words = likely === 0 ? "none lives" : `${likely} ${likely === 1 ? "lives" : "live"}`;
    return [...some, told(words, figures.now), ` (${chance(of20Likely(kind))}).`];
  }
  return [
    ...some,
    told(`${bandWords(living)} live, most likely ${living.likely}`, figures.now),
    ` (${chance(of20Likely(kind))}).`,
  ];
}

/** How sure, in words: by how wide the band is. */
export function surenessWords({ living, last_count }: KindOutput): string {
  const width = living.high - living.low;
  if (last_count === null) return "Not counted yet: this is what becomes of so many, as a rule";
  if (width === 0) return "Settled";
  return width <= 1 ? "Nearly settled" : width <= 3 ? "Open by a few heads" : "Wide open";
}

/** "Losses: 1 found, 1 feared. By age alone 4 to 5 would live." */
export function lossSentence(kind: KindOutput): Sentence {
  const { lost_found: found, lost_feared: feared, moved_out: moved, by_age_alone: age, figures } = kind;
  const parts = [
    ...(found > 0 ? [`${found} found dead`] : []),
    ...(feared > 0 ? [`${feared} feared lost`] : []),
    ...(moved > 0 ? [`${moved} moved out`] : []),
  ];
  const logged = parts.length === 0 ? "No losses logged. " : `${capitalised(parts.join(", "))}. `;
  return [logged, "By age alone ", told(bandWords(age), figures.by_age), " would live today."];
}

const capitalised = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

/** "In 12 weeks 2 to 4, most likely 3." for each time asked about. */
export const laterSentence = ({ later }: KindOutput): Sentence => [
  "If nobody is added, trouble that may set in reckoned with: ",
  ...later.flatMap(
    ({ weeks, figure, low, likely, high }, i): Sentence => [
      i === 0 ? "" : i === later.length - 1 ? " and " : ", ",
      told(low === high ? `${likely}` : `${likely} (${bandWords({ low, high })})`, figure),
      ` in ${weeks} weeks`,
    ],
  ),
  ".",
];

/** What the last count says, and that what it did not see may say nothing. */
export function lastCountSentence({ last_count: last }: KindOutput): string | null {
  if (last === null) return null;
  const seen = `Counted ${dateWords(last.on)}: ${last.seen} seen.`;
  return last.why === null ? seen : `${seen} ${last.why}`;
}

/** Counts before the last, the latest first: "before: 3 of 4 on 25 May 2026, at least 2 of 4 on 4 May 2026". */
export function earlierCountsWords({ counts }: KindOutput): string | null {
  const earlier = counts.slice(1);
  if (earlier.length === 0) return null;
  const told = earlier.map(
    ({ on, seen, of, says }) =>
      `${says === "at_least" ? "at least " : ""}${seen} of ${of} on ${dateWords(on)}`,
  );
  return `Counted before: ${told.join(", ")}.`;
}

export function moreSeenSentence(more: NonNullable<KindOutput["more_seen"]>): string {
  const { on, seen, on_record, breeds } = more;
  const first = breeds ? "Born here, perhaps: it breeds in tanks" : "Born here";
  return `On ${dateWords(on)} ${seen} were seen; the record has ${on_record}. ${first}? Added and not logged? Counted twice? Until you say, the record's ${on_record} stand.`;
}
