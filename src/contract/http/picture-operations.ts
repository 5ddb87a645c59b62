/** Operations on pictures of entries: listed, added, taken away, brought back. Their bytes are served by the page. */
import { z } from "zod";
import { MOST_PICTURE_BYTES, MOST_PICTURE_WORDS, MOST_PICTURES } from "../picture/limits.ts";
import { PICTURE_TYPES } from "../picture/picture.ts";
import { EXAMPLE } from "./examples.ts";
import type { Operation } from "./operation.ts";
import { id } from "./parts.ts";

const MIB = 1024 * 1024;

export const newPicture = z.strictObject({
  name: z.string().max(200).optional().describe("of the file; for messages alone"),
  shows: z
    .string()
    .max(2_000)
    .optional()
    .describe(`what it shows, read out in its place; up to ${MOST_PICTURE_WORDS} letters`),
  image_base64: z
    .string()
    .describe(
      `JPEG, PNG or WebP as Base64, up to ${MOST_PICTURE_BYTES / MIB} MiB of bytes; place, time and camera are taken out of it before it is kept`,
    ),
});
export type NewPictureSent = z.infer<typeof newPicture>;

export const pictureView = z.strictObject({
  id,
  entry: id,
  type: z.enum(PICTURE_TYPES),
  width_px: z.int().min(1).describe("as it is shown"),
  height_px: z.int().min(1),
  size_bytes: z.int().min(1),
  sha256: z
    .string()
    .regex(/^[0-9a-f]{64}$/)
    .describe("of the bytes that are kept"),
  shows: z.string(),
  added_at: z.iso.datetime(),
  added_by: z.string(),
  kept: z.boolean().describe("false once taken away; it can be brought back"),
  address: z
    .string()
    .describe("where its bytes are, on this server; nothing is there while it is taken away"),
});
export type PictureOut = z.infer<typeof pictureView>;

const pictureList = z.strictObject({
  pictures: z.array(pictureView).describe("in the order they were added, those taken away too"),
});

const { tank, entry, loss, picture, gonePicture } = EXAMPLE;
const ofLoss = { tank, entry: loss };
/** One pixel. */
const DOT =
  "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg==";
const PICTURES = "/tanks/{tank}/entries/{entry}/pictures";

export const PICTURE_OPERATIONS: readonly Operation[] = [
  {
    id: "listPictures",
    method: "GET",
    path: PICTURES,
    summary: "Pictures of an entry, without their bytes",
    changes: false,
    replies: { 200: pictureList },
    problems: [404],
    examples: [{ name: "of a loss", params: ofLoss, status: 200 }],
  },
  {
    id: "addPicture",
    method: "POST",
    path: PICTURES,
    summary: `Keep a picture with animals added or lost, up to ${MOST_PICTURES} an entry; the same picture twice is one`,
    changes: true,
    takes: "file",
    body: newPicture,
    replies: { 200: pictureView, 201: pictureView },
    problems: [400, 404, 413, 422, 429],
    examples: [
      {
        name: "a PNG",
        params: ofLoss,
        body: { name: "dot.png", shows: "One white dot (invented)", image_base64: DOT },
        status: 201,
      },
      { name: "the same again: one picture", params: ofLoss, body: { image_base64: DOT }, status: 200 },
      {
        name: "a drawing made of text",
        params: ofLoss,
        body: { name: "snail.svg", image_base64: "PHN2Zy8+" },
        status: 422,
      },
      {
        name: "an entry that takes none",
        params: { tank, entry },
        body: { image_base64: DOT },
        status: 422,
      },
    ],
  },
  {
    id: "takePictureAway",
    method: "DELETE",
    path: `${PICTURES}/{picture}`,
    summary: "Take a picture away; it can be brought back",
    changes: true,
    replies: { 200: pictureView },
    problems: [404, 429],
    examples: [
      { name: "taken away", params: { ...ofLoss, picture }, status: 200 },
      { name: "not there", params: { ...ofLoss, picture: "no-such-picture" }, status: 404 },
    ],
  },
  {
    id: "bringPictureBack",
    method: "POST",
    path: `${PICTURES}/{picture}/bring-back`,
    summary: "Bring back a picture that was taken away",
    changes: true,
    replies: { 200: pictureView },
    problems: [404, 422, 429],
    examples: [{ name: "back again", params: { ...ofLoss, picture: gonePicture }, status: 200 }],
  },
];
