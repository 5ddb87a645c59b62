/** All water sums by group, each with the question that it answers. With a tank its readings fill their fields. */
import { SUM_GROUPS, type Sum, type SumGroup } from "../../answers/sums/sum.ts";
import { type Page, type TankHead, to } from "../page.ts";

export interface SumsView {
  /** Null where somebody only wants to reckon. */
  readonly head: TankHead | null;
  readonly sums: readonly Pick<Sum, "id" | "group" | "name" | "question">[];
}

export function sumsPage({ head, sums }: SumsView): Page {
  const groups = (Object.keys(SUM_GROUPS) as SumGroup[])
    .map((group) => ({ group, of: sums.filter((sum) => sum.group === group) }))
    .filter(({ of }) => of.length > 0);
  return {
    title: head === null ? "Water sums" : `Water sums, ${head.name}`,
    tank: head,
    here: head === null ? null : "sums",
    body: (
      <>
        <h1>Water sums</h1>
        <p class="gloss">
          Questions about water and care, each with its answer, its range and how it was worked out.{" "}
          {head === null
            ? "Opened from a tank's own page they are filled from its readings."
            : `Fields are filled from what ${head.name} knows, and say since when. Nothing is saved.`}
        </p>
        {groups.map(({ group, of }) => (
          <section key={group}>
            <h2>{SUM_GROUPS[group]}</h2>
            <dl class="sums">
              {of.map(({ id, name, question }) => (
                <div key={id}>
                  <dt>
                    <a href={to.sum(head?.id ?? null, id)}>{name}</a>
                  </dt>
                  <dd>{question}</dd>
                </div>
              ))}
            </dl>
          </section>
        ))}
      </>
    ),
  };
}
