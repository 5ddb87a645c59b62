/** Every page's routes: one line a file. */
import type { PageRoute } from "../route.ts";
import { AHEAD_ROUTES } from "./ahead.ts";
import { ALMANAC_ROUTES } from "./almanac.ts";
import { ANIMALS_ROUTES } from "./animals.ts";
import { ARRIVALS_ROUTES } from "./arrivals.ts";
import { BENCH_ROUTES } from "./bench.ts";
import { BENCH_WAVE_ROUTES } from "./bench-wave.ts";
import { BRING_IN_ROUTES } from "./bring-in.ts";
import { CHARTS_ROUTES } from "./charts.ts";
import { DAYBOOK_ROUTES } from "./daybook.ts";
import { ENTRY_ROUTES } from "./entry.ts";
import { ERRANDS_ROUTES } from "./errands.ts";
import { FEEDING_ROUTES } from "./feeding.ts";
import { GROWTHS_ROUTES } from "./growths.ts";
import { HEADS_ROUTES } from "./heads.ts";
import { HISTORY_ROUTES } from "./history.ts";
import { LARDER_ROUTES } from "./larder.ts";
import { LEARNED_ROUTES } from "./learned.ts";
import { OUTBOX_ROUTES } from "./outbox.ts";
import { PICTURE_ROUTES } from "./pictures.ts";
import { QUESTION_ROUTES } from "./questions.ts";
import { READING_ROUTES } from "./readings.ts";
import { ROUND_ROUTES } from "./round.ts";
import { SHEET_ROUTES } from "./sheet.ts";
import { SHOP_ROUTES } from "./shop.ts";
import { SOURCES_ROUTES } from "./sources.ts";
import { START_ROUTES } from "./start.ts";
import { START_UP_ROUTES } from "./start-up.ts";
import { SUMS_ROUTES } from "./sums.ts";
import { TAKE_OUT_ROUTES } from "./take-out.ts";
import { TREND_ROUTES } from "./trends.ts";
import { UNIT_ROUTES } from "./units.ts";
import { WAVES_ROUTES } from "./waves.ts";
import { WEEKS_ROUTES } from "./weeks.ts";
import { WET_HAND_ROUTES } from "./wet-hand.ts";
import { WHAT_IF_ROUTES } from "./what-if.ts";
import { WORKING_ROUTES } from "./working.ts";
import { WRONG_ROUTES } from "./wrong.ts";

export const PAGE_ROUTES: readonly PageRoute[] = [
  ...START_ROUTES,
  ...ROUND_ROUTES,
  ...BENCH_ROUTES,
  ...BENCH_WAVE_ROUTES,
  ...QUESTION_ROUTES,
  ...READING_ROUTES,
  ...DAYBOOK_ROUTES,
  ...ENTRY_ROUTES,
  ...PICTURE_ROUTES,
  ...OUTBOX_ROUTES,
  ...WET_HAND_ROUTES,
  ...BRING_IN_ROUTES,
  ...TAKE_OUT_ROUTES,
  ...UNIT_ROUTES,
  ...HISTORY_ROUTES,
  ...WRONG_ROUTES,
  ...WAVES_ROUTES,
  ...ALMANAC_ROUTES,
  ...ERRANDS_ROUTES,
  ...SHOP_ROUTES,
  ...SHEET_ROUTES,
  ...WEEKS_ROUTES,
  ...FEEDING_ROUTES,
  ...ANIMALS_ROUTES,
  ...SUMS_ROUTES,
  ...WHAT_IF_ROUTES,
  ...WORKING_ROUTES,
  ...SOURCES_ROUTES,
  ...GROWTHS_ROUTES,
  ...LARDER_ROUTES,
  ...LEARNED_ROUTES,
  ...AHEAD_ROUTES,
  ...HEADS_ROUTES,
  ...TREND_ROUTES,
  ...START_UP_ROUTES,
  ...ARRIVALS_ROUTES,
  ...CHARTS_ROUTES,
];
