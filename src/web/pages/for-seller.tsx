/**
 * One entry for who sold the animals: what came dead or died, when, how many, the order beside it, and its pictures, on
 * one page to print. It says what it is: the keeper's own record.
 */
import { type Page, type TankHead, to } from "../page.ts";
import { captionOf, Picture, type PictureView } from "./pictures.tsx";

export interface SellerView {
  readonly head: TankHead;
  readonly entry: string;
  readonly sentence: string;
  /** Name of a fact and the fact, in words. */
  readonly facts: readonly (readonly [name: string, words: string])[];
  readonly hourKnown: boolean;
  readonly pictures: readonly PictureView[];
  /** The daybook holds an order of that animal from before. */
  readonly orderKnown: boolean;
}

export function sellerPage(view: SellerView): Page {
  const { head, entry, sentence, facts, hourKnown, orderKnown, pictures } = view;
  return {
    title: `For the seller: ${sentence} ${head.name}`,
    tank: head,
    here: "daybook",
    body: (
      <article class="for-seller">
        <h1>{sentence}</h1>
        <p class="gloss">
          For the seller: one entry of the daybook, with its pictures and the order beside it.
        </p>
        <dl class="facts">
          {facts.map(([name, words]) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{words}</dd>
            </div>
          ))}
        </dl>
        {hourKnown ? null : (
          <p class="screen-only">
            The hour is not logged. <a href={`${to.entry(head.id, entry)}#correct`}>Add it to the entry</a>:
            many shops ask for it.
          </p>
        )}
        {pictures.length === 0 ? (
          <p class="screen-only">
            No picture yet. <a href={`${to.entry(head.id, entry)}#pictures`}>Add one</a>
          </p>
        ) : (
          <div class="seller-pictures">
            {pictures.map((picture) => (
              <figure key={picture.id} class="picture">
                <Picture tank={head.id} picture={picture} />
                <figcaption>
                  {captionOf(picture)} <span class="digest">SHA-256 {picture.sha256.slice(0, 16)}</span>
                </figcaption>
              </figure>
            ))}
          </div>
        )}
        <p class="hint">
          This is the keeper's own record.{" "}
          {orderKnown ? "The order is the last one of that animal logged before; " : ""}
          {pictures.length === 0
            ? ""
            : "hours of pictures are those at which they were added; what their files told of place, time and camera was taken out."}
        </p>
        <p class="actions">
          <a class="action" href={to.entry(head.id, entry)}>
            Back to the entry
          </a>
        </p>
      </article>
    ),
  };
}
