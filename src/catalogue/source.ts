/** A work that facts rest on. */
export interface Source {
  readonly key: string;
  /** Its own title, where known. */
  readonly title?: string;
  /** What was taken from it. */
  readonly about: string;
  readonly authors?: string;
  readonly year?: number;
  readonly where?: string;
  readonly doi?: string;
  /** How much of it was seen; `none`: no work stands behind the key. */
  readonly opened: "whole" | "abstract" | "passage" | "page" | "source-code" | "not-opened" | "none";
  readonly note?: string;
}
