/** One kind of the heads page: how many live, how sure, what would settle it, losses against the expected, what it eats. */

import { restingWords } from "../../answers/heads/heads.ts";
import {
  earlierCountsWords,
  lastCountSentence,
  laterSentence,
  livingSentence,
  lossSentence,
  moreSeenSentence,
  surenessWords,
} from "../../answers/heads/words.ts";
import { dateWords } from "../../answers/words.ts";
import type { KindOutput } from "../../contract/output/heads.ts";
import type { AnimalGroup } from "../../engine/types/animal.ts";
import { to } from "../page.ts";
import { Disclosure } from "../parts/disclosure.tsx";
import { Notice } from "../parts/notice.tsx";
import { Quantity } from "../parts/quantity.tsx";
import { capital, lowerFirst } from "../parts/text.ts";
import { Sentence } from "./sentence.tsx";

interface KindProps {
  readonly tank: string;
  readonly kind: KindOutput;
}

export function HeadsKind({ tank, kind }: KindProps) {
  const {
    id,
    name,
    figures,
    seen,
    settles,
    last_count: last,
    more_seen: more,
    cast_shell_on: cast,
    counts,
  } = kind;
  const counted = lastCountSentence(kind);
  const earlier = earlierCountsWords(kind);
  const typed = `?animal=${encodeURIComponent(name)}`;
  return (
    <section id={id}>
      <h3>{capital(name)}</h3>
      <p>
        <Sentence of={livingSentence(kind)} /> {surenessWords(kind)}.
      </p>
      {more === null ? null : (
        <Notice kind="look" title="More seen than on record">
          <p>{moreSeenSentence(more)}</p>
        </Notice>
      )}
      <p>
        <Sentence of={lossSentence(kind)} />
        {counted === null ? null : ` ${counted}`}
      </p>
      {earlier === null ? null : (
        <Disclosure
          summary={counts.length === 2 ? "The count before it" : `The ${counts.length - 1} counts before it`}
        >
          <p>{earlier}</p>
        </Disclosure>
      )}
      {cast === null ? null : (
        <p>
          A cast shell was seen on {dateWords(cast)}: that is no loss. Whoever moulted hides for up to ten
          days.
        </p>
      )}
      <p>
        What would settle it: {settles} Each living head is then seen with a chance of{" "}
        <Quantity figure={figures.seen}>{Math.round(100 * seen.chance.central)} %</Quantity>
        {last === null || last.says === "so_many" ? "." : "; a look by day says nothing of those not seen."}
      </p>
      <p>
        <Sentence of={laterSentence(kind)} /> A year takes{" "}
        <Quantity figure={figures.loss}>
          {share(kind.loss_per_year.low)} to {share(kind.loss_per_year.high)} %
        </Quantity>{" "}
        of them while nothing is amiss.
      </p>
      <Known kind={kind} />
      <p>
        <a href={`${to.newEntry(tank, "head_count")}${typed}`}>Log a count</a>,{" "}
        <a href={`${to.newEntry(tank, "loss")}${typed}`}>a loss</a> or{" "}
        <a href={`${to.newEntry(tank, "addition")}${typed}`}>an addition</a> of {name}
      </p>
      <Doubt group={kind.group as AnimalGroup} />
    </section>
  );
}

const share = (part: number): string => `${Math.round(100 * part)}`;

function Known({ kind: { known, figures } }: { readonly kind: KindOutput }) {
  if (known === null || figures.known === null) return null;
  return (
    <p>
      By known ends alone <Quantity figure={figures.known}>{share(known.share_at_90_days)} %</Quantity> lived
      90 days; not all that die are found, so it may be fewer.
    </p>
  );
}

/** Dead, resting or moulted? */
function Doubt({ group }: { readonly group: AnimalGroup }) {
  const { looksDead, lives, dead, doubt } = restingWords(group);
  return (
    <Disclosure summary="Dead, resting or moulted?">
      <p>{looksDead}</p>
      <p>It lives: {lowerFirst(lives)}</p>
      <p>It is dead: {lowerFirst(dead)}</p>
      <p>In doubt: {lowerFirst(doubt)}</p>
    </Disclosure>
  );
}
