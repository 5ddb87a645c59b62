import type { AnimalFile } from "./schema.ts";

/** Something that must hold within one animal: field, what is wrong and the likely fix; nothing when it holds. */
export type Rule = (animal: AnimalFile) => [field: string, wrong: string, fix: string] | undefined | false;
