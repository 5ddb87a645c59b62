/** By the daybook the tank lies fallow: what is worked out here is the tank as it is usually fed, and where the other is. */
import { dateWords } from "../../answers/words.ts";
import { to } from "../page.ts";
import { Notice } from "../parts/notice.tsx";

interface FallowNoticeProps {
  readonly tank: string;
  /** First day with fish again, ISO date; null or absent where the tank does not lie fallow. */
  readonly until: string | null | undefined;
}

export function FallowNotice({ tank, until }: FallowNoticeProps) {
  if (until === null || until === undefined) return null;
  return (
    <Notice kind="look">
      <p>
        By the daybook the tank lies fallow until {dateWords(until)}. This page has it with its fish and its
        feed. Without both, leftovers stop:{" "}
        <a href={`${to.tank(tank, "arrivals")}?fallow=1#fallow`}>who goes hungry</a>.
      </p>
    </Notice>
  );
}
