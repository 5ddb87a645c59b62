/** Numbers with what each is, as pairs; every number a door to its working. Nothing where there are none. */
import type { Sentence as SentenceParts } from "../../answers/sentence.ts";
import { unitText } from "../parts/text.ts";
import { Sentence } from "./sentence.tsx";

interface Asked {
  readonly of: readonly { readonly label: string; readonly value: SentenceParts }[];
  /** As facts stand on a page, or as a sum's answer does, which has its own form on paper. */
  readonly as: "facts" | "sum-rows";
}

export function Rows({ of, as }: Asked) {
  if (of.length === 0) return null;
  return (
    <dl class={as}>
      {of.map(({ label, value }, i) => (
        // Rows have no identity but their place.
        <div key={i}>
          <dt>{unitText(label)}</dt>
          <dd>
            <Sentence of={value} />
          </dd>
        </div>
      ))}
    </dl>
  );
}
