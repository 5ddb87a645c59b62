/** Arrivals of animals with what came dead and its pictures: on an order's own page, and among arrivals. */
import { dateWords } from "../../answers/words.ts";
import { to } from "../page.ts";
import { Picture, type PictureView } from "./pictures.tsx";

export interface Arrived {
  /** Id of the entry. */
  readonly id: string;
  readonly on: string;
  readonly sentence: string;
  /** Heads that were dead on arrival. */
  readonly dead: number;
  readonly pictures: readonly PictureView[];
}

export function ArrivedList({
  tank,
  arrived,
}: {
  readonly tank: string;
  readonly arrived: readonly Arrived[];
}) {
  return (
    <ul class="arrived">
      {arrived.map((one) => (
        <li key={one.id}>
          <p>
            {dateWords(one.on)}: <a href={to.entry(tank, one.id)}>{one.sentence}</a>
          </p>
          {one.pictures.length === 0 ? null : (
            <div class="picture-row">
              {one.pictures.map((picture) => (
                <a key={picture.id} href={`${to.entry(tank, one.id)}#pictures`}>
                  <Picture tank={tank} picture={picture} />
                </a>
              ))}
            </div>
          )}
          {one.dead === 0 ? null : (
            <p class="question-steps">
              <a class="action" href={`${to.entry(tank, one.id)}#pictures`}>
                {one.pictures.length === 0 ? "Add a picture" : "Add another picture"}
              </a>{" "}
              <a class="action" href={to.forSeller(tank, one.id)}>
                Page for the seller
              </a>
            </p>
          )}
        </li>
      ))}
    </ul>
  );
}
