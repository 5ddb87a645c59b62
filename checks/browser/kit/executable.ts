/**
 * The browser that pages are tried in: Chromium without its window. The same engine draws, runs and prints; there is no
 * address bar that is itself a page and is drawn again with each of ours, at eight times the work of an empty tab.
 */
import { existsSync } from "node:fs";

const WITHOUT_WINDOW = "/usr/bin/chromium-headless-shell";

/** Where the package is not to be had, Chromium with its window does as well, only later. */
export const EXECUTABLE = existsSync(WITHOUT_WINDOW) ? WITHOUT_WINDOW : "/usr/bin/chromium";
