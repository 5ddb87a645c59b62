/** Clock changes, computed with another implementation of zones (a Temporal polyfill). */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type InstantContext, readInstant } from "./instant.ts";
import { NO_PREFERENCES } from "./preferences.ts";

const context = (zone: string | null): InstantContext => ({
  preferences: NO_PREFERENCES,
  today: "2026-12-31",
  now: "2026-12-31T12:00:00Z",
  zone,
  future: "refuse",
});

describe("hours that did not exist, or came twice, are asked about with both instants", () => {
  test.each([
    ["Europe/London", "2026-03-29T01:30", "2026-03-29T00:30:00Z", "2026-03-29T01:30:00Z"],
    ["Europe/London", "2026-10-25T01:30", "2026-10-25T00:30:00Z", "2026-10-25T01:30:00Z"],
    ["America/New_York", "2026-11-01T01:30", "2026-11-01T05:30:00Z", "2026-11-01T06:30:00Z"],
    ["America/New_York", "2026-03-08T02:30", "2026-03-08T06:30:00Z", "2026-03-08T07:30:00Z"],
    ["Australia/Lord_Howe", "2026-04-05T01:45", "2026-04-04T14:45:00Z", "2026-04-04T15:15:00Z"],
  ])("%s %s", (zone, text, first, second) => {
    const outcome = readInstant(text, context(zone));
    expect(outcome.verdict).toBe("ask");
    expect("choices" in outcome ? outcome.choices.map((choice) => choice.text) : []).toEqual([first, second]);
  });
});

test("a day that a zone never had is asked about", () => {
  expect(readInstant("2011-12-30T12:00", context("Pacific/Apia")).verdict).toBe("ask");
});

test("an hour that came once is kept with its offset", () => {
  expect(readInstant("2026-07-01T08:00", context("Europe/London"))).toMatchObject({
    verdict: "accept",
    value: { day: "2026-07-01", at: { utc: "2026-07-01T07:00:00Z", offsetMinutes: 60 } },
  });
});

test("without a zone a local time is kept as its day; with an offset it is an instant", () => {
  expect(readInstant("2026-07-01T08:00", context(null))).toMatchObject({
    value: { day: "2026-07-01", at: null },
  });
  expect(readInstant("2026-07-01T08:00+05:30", context(null))).toMatchObject({
    value: { at: { utc: "2026-07-01T02:30:00Z" } },
  });
});

test("more than ten minutes ahead of the clock is the future", () => {
  expect(readInstant("2026-12-31T12:09:00Z", context(null)).verdict).toBe("accept");
  expect(readInstant("2026-12-31T12:11:00Z", context(null)).verdict).toBe("refuse");
});

test("an instant prints back and is read again as itself", () => {
  const minutes = fc.integer({ min: 0, max: 5 * 365 * 24 * 60 });
  fc.assert(
    fc.property(
      minutes,
      fc.constantFrom("Europe/London", "America/New_York", "Asia/Kolkata", "Australia/Lord_Howe"),
      (since, zone) => {
        const utc = `${new Date(Date.UTC(2021, 0, 1) + since * 60_000).toISOString().slice(0, 19)}Z`;
        expect(readInstant(utc, context(zone))).toMatchObject({ verdict: "accept", value: { at: { utc } } });
      },
    ),
  );
});
