/**
 * Pictures of one entry: those that stand, each with what it shows; one form to add one, which works without script and
 * from a phone's camera; those taken away, to be brought back. Used on the entry's page, small ones elsewhere.
 */
import type { FieldDoubt } from "../../answers/questions/doubts.ts";
import { counted } from "../../answers/words.ts";
import { MOST_PICTURE_BYTES, MOST_PICTURE_WORDS, MOST_PICTURES } from "../../contract/picture/limits.ts";
import { PICTURE_TYPES } from "../../contract/picture/picture.ts";
import { to } from "../page.ts";
import { Field, FieldErrorText } from "../parts/field.tsx";
import { Notice } from "../parts/notice.tsx";
import { errorOf } from "./form-fields.tsx";

export interface PictureView {
  readonly id: string;
  /** As the keeper says it; may be empty. */
  readonly shows: string;
  /** Read out in its place: what it shows, else the entry's own sentence. */
  readonly alt: string;
  readonly width: number;
  readonly height: number;
  /** When it was added, in words, and by whom. */
  readonly added: string;
  readonly by: string;
  readonly sha256: string;
}

export interface PicturesView {
  readonly tank: string;
  readonly entry: string;
  /** The entry stands: one that was taken away takes no pictures, and shows none. */
  readonly open: boolean;
  readonly shown: readonly PictureView[];
  readonly takenAway: readonly PictureView[];
  /** Just added, taken away or brought back, in words. */
  readonly done: string | null;
  readonly shows: string;
  readonly doubts: readonly FieldDoubt[];
}

/** A picture in its own proportions: its room is kept before it is there. */
export function Picture({ tank, picture }: { readonly tank: string; readonly picture: PictureView }) {
  const { id, alt, width, height } = picture;
  return <img src={to.picture(tank, id)} alt={alt} width={width} height={height} loading="lazy" />;
}

export const captionOf = ({ shows, added, by }: PictureView): string =>
  `${shows === "" ? "" : `${shows}. `}Added ${added}, by ${by}.`;

export function Pictures(view: PicturesView) {
  const { tank, entry, open, shown, takenAway, done, doubts } = view;
  const all = shown.length + takenAway.length;
  if (!open) {
    if (all === 0) return null;
    return (
      <section id="pictures">
        <h2>Pictures</h2>
        <p>{counted(all, "picture")} went away with this entry, and will come back with it.</p>
      </section>
    );
  }
  return (
    <section id="pictures">
      <h2>Pictures</h2>
      {done === null ? null : (
        <Notice kind="done" title={done}>
          <p>The entry stays as it was.</p>
        </Notice>
      )}
      {shown.map((picture) => (
        <figure key={picture.id} class="picture">
          <a href={to.picture(tank, picture.id)}>
            <Picture tank={tank} picture={picture} />
          </a>
          <figcaption>{captionOf(picture)}</figcaption>
          <KeepForm view={view} picture={picture} go="take_away" words="Take this picture away" />
        </figure>
      ))}
      <p>
        <a class="action" href={to.forSeller(tank, entry)}>
          Page for the seller, to print
        </a>
      </p>
      {shown.length >= MOST_PICTURES && doubts.length === 0 ? (
        <p>An entry holds {MOST_PICTURES} pictures. To add another, take one of them away first.</p>
      ) : (
        <AddForm {...view} />
      )}
      {takenAway.length === 0 ? null : (
        <>
          <h3>Pictures taken away</h3>
          <ul>
            {takenAway.map((picture) => (
              <li key={picture.id}>
                {captionOf(picture)}
                <KeepForm view={view} picture={picture} go="bring_back" words="Bring it back" />
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

interface KeepFormProps {
  readonly view: PicturesView;
  readonly picture: PictureView;
  readonly go: "take_away" | "bring_back";
  readonly words: string;
}

function KeepForm({ view: { tank, entry }, picture, go, words }: KeepFormProps) {
  return (
    <form method="post" action={`${to.pictures(tank, entry)}/${picture.id}`} class="beside-actions">
      <button type="submit" name="go" value={go} aria-label={`${words}: ${picture.alt}`}>
        {words}
      </button>
    </form>
  );
}

const MIB = 1024 * 1024;

function AddForm({ tank, entry, shows, doubts, shown }: PicturesView) {
  const error = errorOf("picture", doubts);
  return (
    <form
      method="post"
      action={to.pictures(tank, entry)}
      enctype="multipart/form-data"
      class="picture-form"
      data-picture
    >
      <div class={error === null ? "field" : "field wrong"}>
        <label for="picture" class="label">
          {shown.length === 0 ? "Add a picture" : "Add another picture"}
        </label>
        <div class="hint" id="picture-hint">
          Take one, or choose one: JPEG, PNG or WebP, up to {MOST_PICTURE_BYTES / MIB} MiB. Place, time and
          camera that the file tells of are taken out before it is kept.
        </div>
        <FieldErrorText name="picture" error={error} />
        <div class="input-row">
          <input
            type="file"
            id="picture"
            name="picture"
            class="input full picture-input"
            accept={PICTURE_TYPES.join(",")}
            aria-describedby={error === null ? "picture-hint" : "picture-hint picture-error"}
            aria-invalid={error === null ? undefined : "true"}
          />
        </div>
      </div>
      <Field
        name="shows"
        label="What it shows"
        hint={`Such as: both snails in the open bag, feet limp. May be left empty; up to ${MOST_PICTURE_WORDS} letters`}
        value={shows}
        error={errorOf("shows", doubts)}
      />
      <p class="picture-said" data-picture-said role="status" />
      <div class="actions">
        <button type="submit" class="first">
          Keep the picture
        </button>
      </div>
    </form>
  );
}
