/** Every page's routes: one line a file. */
import type { PageRoute } from "../route.ts";
import { ANIMALS_ROUTES } from "./animals.ts";
import { ERRANDS_ROUTES } from "./errands.ts";
import { SHEET_ROUTES } from "./sheet.ts";
import { SOURCES_ROUTES } from "./sources.ts";
import { WAVES_ROUTES } from "./waves.ts";
import { WORKING_ROUTES } from "./working.ts";

export const PAGE_ROUTES: readonly PageRoute[] = [
  ...WAVES_ROUTES,
  ...ERRANDS_ROUTES,
  ...SHEET_ROUTES,
  ...ANIMALS_ROUTES,
  ...WORKING_ROUTES,
  ...SOURCES_ROUTES,
];
