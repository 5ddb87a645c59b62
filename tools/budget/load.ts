/** What a load costs: largest paint, shifts, blocked time, bytes on the line before and after the page was there. */
import type { CDPSession, Page } from "playwright-core";

export interface LoadFigures {
  readonly lcpMs: number;
  readonly cls: number;
  /** Of each long task after the first paint, what exceeds 50 ms. */
  readonly blockedMs: number;
  /** Of what was asked for before the page's load event, compressed, with headers. */
  readonly firstBytes: number;
  readonly laterBytes: number;
}

interface Marks {
  lcp: number;
  cls: number;
  blocked: number;
}

export interface LoadWatch {
  readonly bytes: { first: number; later: number };
}

/** How long shifts and tasks after the load still count. */
const AFTER_LOAD_MS = 4000;

/** To be called before the page is opened. */
export async function watchLoad(page: Page, session: CDPSession): Promise<LoadWatch> {
  const bytes = { first: 0, later: 0 };
  const late = new Set<string>();
  let loaded = false;
  page.once("load", () => {
    loaded = true;
  });
  session.on("Network.requestWillBeSent", ({ requestId }) => {
    if (loaded) late.add(requestId);
  });
  session.on("Network.loadingFinished", ({ requestId, encodedDataLength }) => {
    if (late.has(requestId)) bytes.later += encodedDataLength;
    else bytes.first += encodedDataLength;
  });
  await page.addInitScript(() => {
    const marks: Marks = { lcp: 0, cls: 0, blocked: 0 };
    (window as unknown as { marks: Marks }).marks = marks;
    const hear = (type: string, take: (entry: PerformanceEntry) => void) =>
      new PerformanceObserver((list) => list.getEntries().forEach(take)).observe({ type, buffered: true });
    hear("largest-contentful-paint", (entry) => {
      marks.lcp = entry.startTime;
    });
    hear("layout-shift", (entry) => {
      const { value, hadRecentInput } = entry as PerformanceEntry & {
        value: number;
        hadRecentInput: boolean;
      };
      if (!hadRecentInput) marks.cls += value;
    });
    hear("longtask", (entry) => {
      const first = performance.getEntriesByName("first-contentful-paint")[0]?.startTime;
      if (first !== undefined && entry.startTime >= first) marks.blocked += Math.max(0, entry.duration - 50);
    });
  });
  return { bytes };
}

export async function loadFigures(page: Page, { bytes }: LoadWatch): Promise<LoadFigures> {
  await page.waitForTimeout(AFTER_LOAD_MS);
  const marks = await page.evaluate(() => (window as unknown as { marks: Marks }).marks);
  return {
    lcpMs: Math.round(marks.lcp),
    cls: Math.round(marks.cls * 1000) / 1000,
    blockedMs: Math.round(marks.blocked),
    firstBytes: bytes.first,
    laterBytes: bytes.later,
  };
}
