/** What a picture is once its bytes were read: of one of three kinds, its size known, nothing in it but the image. */

export const PICTURE_TYPES = ["image/jpeg", "image/png", "image/webp"] as const;
export type PictureType = (typeof PICTURE_TYPES)[number];

export interface Picture {
  readonly type: PictureType;
  /** As it is shown: a picture taken with the phone on its side is turned. */
  readonly width: number;
  readonly height: number;
  /** Without anything that tells where, when or with what it was taken. */
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** Of one kind of file: the picture, or why it is none. */
export type Stripped = Picture | { readonly why: "cut_short" | "not_built_so" | "moving" | "not_shown" };
