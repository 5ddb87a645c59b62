/** Weeks ahead of one tank. */
import { fallowUntil } from "../../answers/arrivals/quarantine.ts";
import { to } from "../../web/page.ts";
import { aheadPage } from "../../web/pages/ahead.tsx";
import { weekAsked } from "../../web/pages/ahead-view.ts";
import type { PageRoute } from "../route.ts";
import { answeredPage } from "./answered.ts";

export const AHEAD_ROUTES: readonly PageRoute[] = [
  answeredPage({
    path: "/tanks/:tank/ahead",
    here: "ahead",
    what: "Weeks ahead",
    address: (tank, { query }) => {
      const kept = ["of", "week"].flatMap((name) =>
        query[name] === undefined ? [] : [`${name}=${encodeURIComponent(query[name])}`],
      );
      return `${to.tank(tank, "ahead")}${kept.length === 0 ? "" : `?${kept.join("&")}`}`;
    },
    draw: ({ loaded, answers, request }) =>
      aheadPage({
        head: loaded.head,
        answers,
        fallowUntil: fallowUntil(loaded.record),
        readings: loaded.facts.readings,
        asked: weekAsked(request.query["week"], answers.ahead),
        of: request.query["of"] ?? null,
      }),
  }),
];
