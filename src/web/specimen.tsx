/**
 * Every part and chart once, with invented data: what tools/specimen.ts draws to be looked at. No part of the program.
 */

import type { ShelfFacts } from "./charts/shelf.ts";
import { ShelfPairs } from "./charts/shelf-pair.tsx";
import { TankWedge } from "./charts/tank-wedge.tsx";
import { TwentyRuns } from "./charts/twenty-runs.tsx";
import { WaveStrip } from "./charts/wave-strip.tsx";
import type { Page } from "./page.ts";
import { Advice } from "./parts/advice.tsx";
import { Choices } from "./parts/choices.tsx";
import { Disclosure } from "./parts/disclosure.tsx";
import { ErrorSummary } from "./parts/error-summary.tsx";
import { Field } from "./parts/field.tsx";
import { Grains } from "./parts/grains.tsx";
import { Notice } from "./parts/notice.tsx";
import { Quantity } from "./parts/quantity.tsx";
import { Table } from "./parts/table.tsx";
import { URGENCIES, Urgency } from "./parts/urgency.tsx";

/** Twenty runs about a middle, wider above than below, as the engine's are. */
const spread = (middle: number, width: number): number[] =>
  Array.from({ length: 20 }, (_, i) => middle * Math.exp((((i + 0.5) / 20) * 2 - 1) * width));

function shelf(id: string, name: string, middle: number, width: number, wanted: number): ShelfFacts {
  const runs = spread(middle, width);
  return {
    id,
    name,
    supply: { low: runs[1]!, central: middle, high: runs[18]! },
    runs,
    wanted,
    figures: { supply: `larder.${id}.supply`, wanted: `larder.${id}.wanted` },
  };
}

const SHELVES: readonly ShelfFacts[] = [
  shelf("film_glass", "film on glass", 27, 0.6, 38),
  shelf("film_rock", "film on rock", 46, 0.7, 31),
  shelf("film_sand", "film on sand", 0, 0, 0),
  shelf("hair_algae", "hair algae", 6, 0.9, 17),
  shelf("bubble_algae", "bubble algae", 0, 0, 0),
  shelf("detritus_sand", "detritus on sand", 61, 0.4, 12),
  shelf("detritus_crevice", "detritus in crevices", 21, 0.5, 20),
  shelf("uneaten_feed", "leftovers", 35, 0.8, 14),
  shelf("carrion", "carrion", 2.3, 0.9, 0),
];

const WEEKS = Array.from({ length: 27 }, (_, week) =>
  new Date(Date.UTC(2026, 5, 15 + 7 * week)).toISOString().slice(0, 10),
);

/** Twenty runs that part from a reading, with a wobble of their own. */
const RUNS = Array.from({ length: 20 }, (_, run) =>
  WEEKS.map((_, week) => {
    const ends = 6 + run * 1.1;
    const wobble = Math.sin(week * 0.9 + run * 1.7) * Math.min(1.2, week * 0.15);
    return Math.max(0.2, ends + (12 - ends) * Math.exp(-week / 7) + wobble);
  }),
);

const READINGS = [
  ["2026-04-20", 8],
  ["2026-05-03", 10],
  ["2026-05-18", 10],
  ["2026-06-01", 15],
  ["2026-06-14", 12],
] as const;

export const specimenPage = (): Page => ({
  title: "Specimen of all parts",
  tank: { id: "kitchen", name: "Kitchen tank", keeper: "B. Invented", demonstration: true },
  here: "bench",
  body: (
    <>
      <h1>Wait with the second wave</h1>
      <p class="gloss">Bench: what to do next, and why</p>
      <Advice
        urgency="this_week"
        do="Wait with the second wave until film is back on the glass."
        why={
          <>
            Film grows{" "}
            <Quantity figure="larder.film_glass.supply">about 2.7 rations a day (1.5 to 4.7)</Quantity>; the
            first wave eats <Quantity figure="larder.film_glass.wanted">3.8</Quantity>. Usually short if you
            add: 15 of 20.
          </>
        }
        byWhen="Look again on Thursday 18 Jun 2026."
        wouldChange="Film that is back within two days of wiping, or less of it."
        act={
          <a class="action" href="#act">
            Add the wave now
          </a>
        }
        wait={
          <a class="action" href="#wait">
            Wait, look again on Thursday
          </a>
        }
      />
      <TankWedge id="wedge" shelves={SHELVES} />
      <ShelfPairs
        id="pairs"
        title="Six of seven shelves feed who eats from them"
        sentence="Shelf by shelf, what grows above and what is wanted below, on one start line."
        shelves={SHELVES}
      />
      <WaveStrip
        id="strip"
        waves={[
          {
            number: 1,
            from: "2026-06-15",
            to: "2026-06-29",
            animals: [
              { id: "trochus-snail", name: "banded trochus snail", count: 3 },
              { id: "nassarius", name: "nassarius", count: 3 },
            ],
            gate: [],
          },
          {
            number: 2,
            from: "2026-07-20",
            to: "2026-08-03",
            animals: [
              { id: "trochus-snail", name: "banded trochus snail", count: 2 },
              { id: "conch", name: "fighting conch", count: 1 },
            ],
            gate: [
              "film is back on the glass three days after you wipe it",
              "nothing died that you can't explain",
            ],
          },
          {
            number: 3,
            from: "2026-09-07",
            to: "2026-09-21",
            animals: [{ id: "skunk-cleaner-shrimp", name: "skunk cleaner shrimp", count: 1 }],
            gate: ["something is left two minutes after feeding"],
          },
        ]}
      />
      <TwentyRuns
        id="no3"
        facts={{
          name: "nitrate",
          unit: "mg/L",
          weeks: WEEKS,
          runs: RUNS,
          readings: READINGS.map(([date, value]) => ({ date, low: value - 2.5, high: value + 2.5 })),
          limit: { value: 20, words: "where this keeper wants to stay" },
          asked: 26,
        }}
      />
      <h2>How soon</h2>
      <p>
        {URGENCIES.map((level) => (
          <span key={level}>
            <Urgency level={level} />{" "}
          </span>
        ))}
      </p>
      <p>
        <Grains of20={14} yes="stay under the line" no="go above it">
          Nitrate stays under 20 mg/L: <strong>usually, 14 of 20</strong>
        </Grains>
      </p>
      <div class="ledger">
        <p class="when">15 Jun 2026</p>
        <div class="what">
          <p>Nitrate 12 mg/L, read with a kit that steps by 5.</p>
        </div>
        <div class="why">
          <p>Its own step makes it 10 to 15; that is why the first tick is tall.</p>
        </div>
      </div>
      <h2>Entries</h2>
      <ErrorSummary
        errors={[
          { field: "salinity", text: "Salinity: 1,025 was typed; 0 to 50 psu or 1.000 to 1.040 can be read" },
        ]}
      />
      <form method="post" action="/">
        <Field
          name="water"
          label="How much water is in it?"
          hint="With the sump, without the rock. A guess is fine."
          value="30"
          keypad="decimal"
          unit={{
            name: "water-unit",
            value: "gal",
            choices: [
              { value: "l", label: "litres" },
              { value: "gal", label: "US gallons" },
            ],
          }}
          notSure={{ name: "water-unsure", checked: false, means: "then 60 to 400 litres are reckoned with" }}
        />
        <Field
          name="salinity"
          label="Salinity"
          value="1,025"
          keypad="decimal"
          unit={{ name: "salinity-unit", value: "sg", choices: [{ value: "sg", label: "specific gravity" }] }}
          error={{
            text: "1,025 was typed; 0 to 50 psu or 1.000 to 1.040 specific gravity can be read.",
            fixes: [{ label: "Read as 1.025 specific gravity", name: "fix", value: "salinity=1.025" }],
          }}
        />
        <Choices
          name="floor"
          legend="What is the floor?"
          hint="It decides how much detritus comes to rest."
          options={[
            { value: "bare", label: "Bare glass", checked: false },
            { value: "sand", label: "Sand", hint: "finer than 2 mm", checked: true },
            { value: "rubble", label: "Rubble", checked: false },
          ]}
          notSure={{ value: "unsure", checked: false, means: "Sand of 1 to 6 cm is reckoned with." }}
        />
        <Field name="note" label="Note" lines={3} value="" />
        <div class="actions">
          <button type="submit" class="first">
            Keep and go on
          </button>
          <button type="submit" name="later" value="yes">
            Leave it for now
          </button>
        </div>
      </form>
      <h2>Notices</h2>
      <Notice kind="note">
        <p>30 was read as US gallons: 113.6 litres.</p>
      </Notice>
      <Notice kind="look">
        <p>Salinity 39 is unusual for a reef tank. It is kept as typed.</p>
      </Notice>
      <Notice kind="danger">
        <p>Mains electricity by water: unplug what you will touch. Wiring is for a licensed electrician.</p>
      </Notice>
      <Notice kind="done">
        <p>Kept: nitrate 12 mg/L, 15 Jun 2026.</p>
      </Notice>
      <Disclosure summary="What was assumed">
        <p>Light at the glass: 40 to 90 micromoles.</p>
      </Disclosure>
      <Table
        caption="Readings kept, the latest first"
        columns={[
          { name: "on" },
          { name: "quantity" },
          { name: "as typed" },
          { name: "read as", numeric: true },
        ]}
        rows={[
          ["14 Jun 2026", "nitrate", "12", "12 mg/L (9.5 to 14.5)"],
          ["1 Jun 2026", "phosphate", "0.03 ppm", "0.03 mg/L (0.01 to 0.05)"],
        ]}
      />
    </>
  ),
});
