/**
 * One piece of advice with its four parts: do, why, by when, what would change it. Waiting stands beside acting in the
 * same weight, because it is as often right.
 */
import type { ComponentChildren } from "preact";
import { Urgency, type UrgencyLevel } from "./urgency.tsx";

interface AdviceProps {
  readonly urgency: UrgencyLevel;
  /** One sentence, at most 20 words, the verb first. */
  readonly do: ComponentChildren;
  readonly why: ComponentChildren;
  readonly byWhen: ComponentChildren;
  readonly wouldChange: ComponentChildren;
  /** Links or buttons, class `action`. Give both: `wait` is shown in the same weight. */
  readonly act?: ComponentChildren;
  readonly wait?: ComponentChildren;
  /** Level of the heading, by the page's outline. */
  readonly level?: 2 | 3;
}

export function Advice({ urgency, do: what, why, byWhen, wouldChange, act, wait, level = 2 }: AdviceProps) {
  const Heading = level === 2 ? "h2" : "h3";
  return (
    <article class="advice">
      <Urgency level={urgency} />
      <Heading class="advice-do">{what}</Heading>
      <dl class="advice-parts">
        <div>
          <dt>Why</dt>
          <dd>{why}</dd>
        </div>
        <div>
          <dt>By when</dt>
          <dd>{byWhen}</dd>
        </div>
        <div>
          <dt>What would change this</dt>
          <dd>{wouldChange}</dd>
        </div>
      </dl>
      {act === undefined && wait === undefined ? null : (
        <div class="actions">
          {act}
          {wait}
        </div>
      )}
    </article>
  );
}
