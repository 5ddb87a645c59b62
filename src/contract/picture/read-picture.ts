/**
 * A picture that was sent, judged by its bytes and stripped to its image: the one reader for page and API. What can't be
 * kept is told with what it was, what is taken and the likely fix.
 * Limits: nothing is decoded. The image's own coded bytes are kept as they came; a browser shows them or does not.
 */
import type { Message } from "../quantity/outcome.ts";
import { shown } from "../quantity/show.ts";
import { type FileKind, fileKind } from "./file-kind.ts";
import { MOST_PICTURE_BYTES, MOST_PIXELS, MOST_SIDE_PIXELS } from "./limits.ts";
import { PICTURE_TYPES, type Picture, type PictureType, type Stripped } from "./picture.ts";
import { stripJpeg } from "./strip-jpeg.ts";
import { stripPng } from "./strip-png.ts";
import { stripWebp } from "./strip-webp.ts";

export interface SentPicture {
  /** As the sender calls it; for messages alone. */
  readonly name: string;
  readonly bytes: Uint8Array;
}

export type ReadPicture =
  | { readonly ok: true; readonly picture: Picture }
  | { readonly ok: false; readonly message: Message };

const MIB = 1024 * 1024;
const TAKEN = "JPEG, PNG or WebP";

const STRIP: Readonly<Record<PictureType, (bytes: Uint8Array) => Stripped>> = {
  "image/jpeg": stripJpeg,
  "image/png": stripPng,
  "image/webp": stripWebp,
};

const OTHERS: Readonly<Record<Exclude<FileKind, PictureType | null>, string>> = {
  heic: `is HEIC; a picture must be ${TAKEN}. Set the camera to its most compatible form, or send a screenshot of the picture`,
  avif: `is AVIF; a picture must be ${TAKEN}. Send a screenshot of it`,
  film: `is a film; a picture must be ${TAKEN}. Send a still from it, as a screenshot`,
  gif: `is GIF; a picture must be ${TAKEN}. Send a screenshot of it`,
  tiff: `is TIFF or a camera's raw file; a picture must be ${TAKEN}. Send the JPEG beside it, or a screenshot`,
  bmp: `is a bitmap; a picture must be ${TAKEN}. Save it as PNG`,
  pdf: `is a PDF; a picture must be ${TAKEN}. Send a screenshot of its page`,
  text: `is text or a drawing made of text, such as SVG; a picture must be ${TAKEN}. Send a screenshot of it`,
};

const WHY: Readonly<Record<Extract<Stripped, { why: string }>["why"], string>> = {
  cut_short: "is cut short. Take or save it once more, then send it again",
  not_built_so: "is not whole as a picture. Take or save it once more, or send a screenshot of it",
  moving: "moves; one still picture is taken. Send a screenshot of it",
  not_shown: "is a JPEG of a kind that browsers don't show. Send a screenshot of it",
};

export function readPicture({ name, bytes }: SentPicture): ReadPicture {
  const called = name === "" ? "Picture" : `Picture "${shown(name)}"`;
  const refused = (kind: Message["kind"], words: string): ReadPicture => ({
    ok: false,
    message: { kind, text: `${called}: ${words}` },
  });
  if (bytes.length === 0) return refused("MISSING", "is empty. Choose it again");
  if (bytes.length > MOST_PICTURE_BYTES) {
    return refused(
      "TOOBIG",
      `has ${(bytes.length / MIB).toFixed(1)} MiB, up to ${MOST_PICTURE_BYTES / MIB} MiB are taken. Send a screenshot of it, or set the camera to a smaller size`,
    );
  }
  const kind = fileKind(bytes);
  if (kind === null) return refused("FORMAT", `is no picture that is known here; it must be ${TAKEN}`);
  const type = PICTURE_TYPES.find((one) => one === kind);
  if (type === undefined) return refused("FORMAT", OTHERS[kind as keyof typeof OTHERS]);
  const stripped = STRIP[type](bytes);
  if ("why" in stripped) return refused("FORMAT", WHY[stripped.why]);
  const { width, height } = stripped;
  if (width < 1 || height < 1) return refused("FORMAT", WHY.not_built_so);
  if (width > MOST_SIDE_PIXELS || height > MOST_SIDE_PIXELS || width * height > MOST_PIXELS) {
    return refused(
      "TOOBIG",
      `is ${width} by ${height} pixels; up to ${MOST_PIXELS / 1e6} million in all and ${MOST_SIDE_PIXELS} a side are taken. Send a screenshot of it`,
    );
  }
  return { ok: true, picture: stripped };
}
