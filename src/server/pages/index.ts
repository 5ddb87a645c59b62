/** Every page's routes: one line a file. */
import type { PageRoute } from "../route.ts";

export const PAGE_ROUTES: readonly PageRoute[] = [];
