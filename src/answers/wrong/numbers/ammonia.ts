/** How much of the ammonia is poison at this pH, warmth and salinity, from where on it harms, and what a change does. */
import { afterChange, changesToReach, shareToReach } from "../../../engine/care/changes/dilution.ts";
import { latestReading } from "../../../engine/larder/members.ts";
import { unionisedAmmoniaBand } from "../../../engine/seawater/ammonia.ts";
import { SEAWATER_SOURCES } from "../../../engine/seawater/sources.ts";
import type { Spread } from "../../../engine/types/estimate.ts";
import type { Figure } from "../../../engine/types/figure.ts";
import { figureId } from "../../../engine/types/figure-id.ts";
import { exact, factInput, linkTo, spreadText, workedOut } from "../../../engine/types/link.ts";
import type { Reading, TankFacts } from "../../../engine/types/tank.ts";
import { ammoniaToN, nToAmmonia } from "../../../engine/units/nutrients.ts";
import { told } from "../../sentence.ts";
import { dateWords } from "../../words.ts";
import { type NumbersPart, parameter, roughly, troubleFigure } from "./shape.ts";

const QUARTER = 0.25;
const EQUATION = [SEAWATER_SOURCES["clegg-whitfield-1995"], SEAWATER_SOURCES["epa-1989"]];

/** Share of total ammonia that is un-ionised in this tank, of 1: the doubt of pH and warmth is in the band. */
function unionisedShareOf({ temperatureC, salinityPsu, ph, phScale }: TankFacts): Spread {
  const at = (t: number, reading: number) =>
    unionisedAmmoniaBand(t, salinityPsu.central, reading, phScale, 0);
  return {
    low: at(temperatureC.low, ph.low).low,
    central: at(temperatureC.central, ph.central).central,
    high: at(temperatureC.high, ph.high).high,
  };
}

export function shareFigure(facts: TankFacts): Figure {
  return troubleFigure("unionised_share", {
    label: "share of total ammonia that is the poisonous, un-ionised part",
    spread: scaled(unionisedShareOf(facts), 100),
    ...{ unit: "%", at: "ammonia" },
    formula: "1 / (1 + 10 to the power of (pKa at this warmth and salinity - pH on the total scale))",
    inputs: [
      factInput(facts, "ph", "pH", "1"),
      workedOut("scale of that pH", facts.phScale === "nbs" ? "NBS, as pens and kits read" : "total"),
      factInput(facts, "temperatureC", "temperature", "C"),
      factInput(facts, "salinityPsu", "salinity", "psu"),
      workedOut("doubt of the equation", "15 % either way"),
    ],
    references: EQUATION,
    ...{ confidence: "computed", wouldChange: ["the pH: 0.3 more doubles it", "the temperature"] },
  });
}

/** Total ammonia, mg N/L, at which the un-ionised part comes to a limit in mg NH3/L. */
function limitFigure(name: string, label: string, limit: string, share: Figure): Figure {
  const { low, central, high } = share.spread;
  const nh3 = parameter(limit).central;
  const total = (percent: number) => ammoniaToN(nh3) / (percent / 100);
  return troubleFigure(name, {
    ...{ label, unit: "mg N/L", at: "ammonia" },
    spread: { low: total(high), central: total(central), high: total(low) },
    formula: "limit for the un-ionised part, as nitrogen / its share",
    inputs: [linkTo(share), workedOut("limit for the un-ionised part", `${nh3} mg NH3/L`)],
    parameters: [limit],
    ...{ confidence: "read", wouldChange: ["the pH", "the animals: some bear less"] },
  });
}

export function ammoniaPart({ facts }: { readonly facts: TankFacts }): NumbersPart {
  const share = shareFigure(facts);
  const chronic = limitFigure(
    "ammonia_for_days",
    "total ammonia that harms over days here",
    "tox.NH3_chronic",
    share,
  );
  const acute = limitFigure(
    "ammonia_for_an_hour",
    "total ammonia that harms within an hour here",
    "tox.NH3_acute",
    share,
  );
  const reading = latestReading(facts.readings, "tan_mg_n_per_l");
  const read = reading === null ? null : readingPart(reading, share, chronic);
  return {
    title: "Ammonia",
    rows: [
      { label: "Of total ammonia this much is the poisonous part here", value: [roughly(share)] },
      { label: "Total ammonia that harms over days", value: [roughly(chronic)] },
      { label: "Total ammonia that harms within an hour", value: [roughly(acute)] },
      ...(read === null
        ? [{ label: "Your last test of ammonia", value: ["none is kept: test it now, and log it"] }]
        : read.rows),
    ],
    tables: [],
    notes: [
      "Told as nitrogen, mg N/L. A kit that prints NH4 or NH3 shows about 1.2 to 1.3 times as much.",
      "Limits are those for animals of salt water in general; some shrimps and young animals bear less.",
    ],
    figures: [share, chronic, acute, ...(read?.figures ?? [])],
  };
}

function readingPart({ value, on, censored }: Reading, share: Figure, chronic: Figure) {
  const source = {
    ...{ label: "ammonia as read", value: spreadText(value, "mg N/L") },
    ...{ origin: "figure" as const, figure: figureId.reading("tan_mg_n_per_l") },
  };
  const nh3 = troubleFigure("nh3_now", {
    ...{ label: "un-ionised ammonia at your last test", unit: "mg NH3/L", at: "ammonia" },
    spread: {
      low: nToAmmonia(value.low * share.spread.low) / 100,
      central: nToAmmonia(value.central * share.spread.central) / 100,
      high: nToAmmonia(value.high * share.spread.high) / 100,
    },
    ...{ formula: "total ammonia x un-ionised share, as NH3", inputs: [source, linkTo(share)] },
    ...{ confidence: "computed", wouldChange: ["a second test today", "the pH"] },
  });
  const goal = chronic.spread.central;
  const when = on === null ? "" : ` on ${dateWords(on)}`;
  const row = {
    label: `Un-ionised at your last test${when}`,
    value: [
      ...(censored === "below" ? ["less than "] : censored === "above" ? ["more than "] : []),
      roughly(nh3),
    ],
  };
  const needed = shareToReach(value.central, goal, 0) ?? 0;
  if (needed === 0) {
    return {
      rows: [row, { label: "Water to change for that", value: ["none: it is below what harms over days"] }],
      figures: [nh3],
    };
  }
  const dilution = {
    ...{ at: "dilution", confidence: "computed" as const },
    wouldChange: ["the test: what it misses", "ammonia in the new water, taken as none"],
  };
  const change = troubleFigure("change_for_ammonia", {
    ...{ label: "water to change so that ammonia no longer harms over days", unit: "%" },
    ...{ spread: exact(100 * needed), formula: "(level - limit) / (level - new water)" },
    inputs: [source, linkTo(chronic), workedOut("ammonia in new water", "none")],
    ...dilution,
  });
  const quarters = troubleFigure("quarters_for_ammonia", {
    ...{ label: "changes of a quarter that do the same", unit: "changes" },
    spread: exact(changesToReach(value.central, goal, 0, QUARTER) ?? 0),
    formula: "ln(limit / level) / ln(1 - a quarter), rounded up",
    inputs: [source, linkTo(chronic)],
    ...dilution,
  });
  const after = troubleFigure("ammonia_after_quarter", {
    ...{ label: "total ammonia after one change of a quarter", unit: "mg N/L" },
    spread: {
      low: afterChange(value.low, 0, QUARTER),
      central: afterChange(value.central, 0, QUARTER),
      high: afterChange(value.high, 0, QUARTER),
    },
    ...{ formula: "level x (1 - a quarter)", inputs: [source] },
    ...dilution,
  });
  const times = quarters.spread.central;
  return {
    rows: [
      row,
      {
        label: "Water to change for that",
        value: [
          roughly(change),
          " at once, or ",
          told(`${times} ${times === 1 ? "change" : "changes"}`, quarters.id),
          " of a quarter",
        ],
      },
      { label: "Total ammonia after one quarter", value: [roughly(after)] },
    ],
    figures: [nh3, change, quarters, after],
  };
}

const scaled = ({ low, central, high }: Spread, by: number): Spread => ({
  low: low * by,
  central: central * by,
  high: high * by,
});
