/** A sentence with its numbers as doors to their working. */
import { Fragment } from "preact";
import type { Sentence as SentenceParts } from "../../answers/sentence.ts";
import { Quantity } from "../parts/quantity.tsx";
import { unitText } from "../parts/text.ts";

export function Sentence({ of }: { readonly of: SentenceParts }) {
  return (
    <>
      {of.map((part, i) => (
        <Fragment key={i}>
          {typeof part === "string" ? unitText(part) : <Quantity figure={part.figure}>{part.text}</Quantity>}
        </Fragment>
      ))}
    </>
  );
}
