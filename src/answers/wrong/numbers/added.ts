/** Something that got in: chlorine with new water, too much alkalinity, a medicine or poison; what changes do about it. */
import { afterChange, changesToReach, shareToReach } from "../../../engine/care/changes/dilution.ts";
import type { Figure } from "../../../engine/types/figure.ts";
import { exact, factInput, linkTo, workedOut } from "../../../engine/types/link.ts";
import type { TankFacts } from "../../../engine/types/tank.ts";
import { ATOMIC_MASS } from "../../../engine/units/masses.ts";
import { bare, type NumbersPart, parameter, roughly, troubleFigure } from "./shape.ts";

const QUARTER = 0.25;

/** Chlorine in tap water, mg/L as Cl2: from a trace to what works allow at the tap; from memory. */
const TAP_CHLORINE = { low: 0.2, central: 1, high: 4 } as const;
/** Nitrogen set free with a milligram of chlorine bound as monochloramine: one N for each Cl2. */
const N_PER_CHLORINE = ATOMIC_MASS.N / (2 * ATOMIC_MASS.Cl);
const CHANGED = [0.1, 0.25, 0.5] as const;

export function chlorinePart(): NumbersPart {
  const tap = workedOut("chlorine in tap water", "1 mg/L (0.2 to 4): from memory, no source");
  const each = CHANGED.map((share) => {
    const percent = Math.round(100 * share);
    const chlorine = troubleFigure(`chlorine_${percent}`, {
      ...{ label: `chlorine after a change of ${percent} % with tap water`, unit: "mg/L", at: "chlorine" },
      spread: {
        low: share * TAP_CHLORINE.low,
        central: share * TAP_CHLORINE.central,
        high: share * TAP_CHLORINE.high,
      },
      formula: "share changed x chlorine in the tap water; what the tank uses up at once is left out",
      inputs: [workedOut("share changed", `${percent} %`), tap],
      ...{ confidence: "judgement", wouldChange: ["a chlorine test of the tap water", "the share changed"] },
    });
    const ammonia = troubleFigure(`chloramine_${percent}`, {
      ...{ label: `ammonia that chloramine of that change leaves`, unit: "mg N/L", at: "chlorine" },
      spread: {
        low: chlorine.spread.low * N_PER_CHLORINE,
        central: chlorine.spread.central * N_PER_CHLORINE,
        high: chlorine.spread.high * N_PER_CHLORINE,
      },
      formula: "chlorine x 14.007 / 70.9, where all of it came as monochloramine",
      inputs: [linkTo(chlorine)],
      ...{ confidence: "judgement", wouldChange: ["whether your water works use chloramine"] },
    });
    return { percent, chlorine, ammonia };
  });
  return {
    title: "Chlorine in tap water",
    rows: [],
    tables: [
      {
        title: "By the share of the tank that was changed with it",
        columns: ["Changed, %", "Chlorine, mg/L", "Ammonia from chloramine, mg N/L"],
        rows: each.map(({ percent, chlorine, ammonia }) => [
          [String(percent)],
          [bare(chlorine)],
          [bare(ammonia)],
        ]),
      },
    ],
    notes: [
      "Harm to animals of salt water begins near 0.01 mg/L (from memory): every line of this table is far above that.",
      "How much dechlorinator: as its label says, for the whole tank.",
    ],
    figures: each.flatMap(({ chlorine, ammonia }) => [chlorine, ammonia]),
  };
}

const DKH_PER_MEQ = 2.804;
const FRESH_DKH = 8;
const OVER_DKH = [13, 16, 20] as const;

export function alkalinityPart({ facts }: { readonly facts: TankFacts }): NumbersPart {
  const goal = parameter("tox.alk_range").high;
  const reading = facts.readings.filter(({ quantity }) => quantity === "alkalinity_meq_per_l").at(-1);
  const read = reading === undefined ? null : Math.round(10 * reading.value.central * DKH_PER_MEQ) / 10;
  const levels = [...new Set([...(read !== null && read > goal ? [read] : []), ...OVER_DKH])].sort(
    (a, b) => a - b,
  );
  const each = levels.map((dkh) => {
    const name = `alkalinity_${String(dkh).replace(".", "_")}`;
    const inputs = [
      workedOut("alkalinity now", `${dkh} dKH`),
      workedOut("goal, the upper end of what is usual", `${goal} dKH`),
      workedOut("alkalinity of the new water", `${FRESH_DKH} dKH: taken, test yours`),
    ];
    const common = {
      ...{ at: "alkalinity", inputs, parameters: ["tox.alk_range"], confidence: "judgement" as const },
      wouldChange: ["alkalinity of the new water", "a second test"],
    };
    const change = troubleFigure(name, {
      ...{ label: `water to change to come from ${dkh} to ${goal} dKH`, unit: "%" },
      spread: exact(100 * (shareToReach(dkh, goal, FRESH_DKH) ?? 0)),
      formula: "(level - goal) / (level - new water)",
      ...common,
    });
    const tenths = troubleFigure(`${name}.tenths`, {
      ...{ label: `changes of a tenth from ${dkh} to ${goal} dKH`, unit: "changes" },
      spread: exact(changesToReach(dkh, goal, FRESH_DKH, 0.1) ?? 0),
      formula: "ln((goal - new water) / (level - new water)) / ln(1 - a tenth), rounded up",
      ...common,
    });
    return { dkh, change, tenths };
  });
  return {
    title: "Too much alkalinity",
    rows: [],
    tables: [
      {
        title: `Back to ${goal} dKH`,
        columns: ["Alkalinity now, dKH", "Water to change at once, %", "Or changes of a tenth"],
        rows: each.map(({ dkh, change, tenths }) => [[String(dkh)], [bare(change)], [bare(tenths)]]),
      },
    ],
    notes: [
      "A fall by itself, as corals and walls take it, is gentler than a large change: change at once only where pH is above 8.6.",
    ],
    figures: each.flatMap(({ change, tenths }) => [change, tenths]),
  };
}

/** What stays of anything dissolved after some changes of a quarter. */
export function changesPart({ facts }: { readonly facts: TankFacts }): NumbersPart {
  const each = [1, 2, 4].map((times) => {
    let left = 1;
    for (let i = 0; i < times; i += 1) left = afterChange(left, 0, QUARTER);
    return { times, figure: leftFigure(`left_after_${times}_quarters`, times, left) };
  });
  const litres = troubleFigure("quarter_litres", {
    ...{ label: "a quarter of the water", unit: "L", at: "dilution" },
    spread: {
      low: QUARTER * facts.waterL.low,
      central: QUARTER * facts.waterL.central,
      high: QUARTER * facts.waterL.high,
    },
    ...{ formula: "water / 4", inputs: [factInput(facts, "waterL", "water", "L")] },
    ...{ confidence: "computed", wouldChange: ["the water in the tank"] },
  });
  const tenth = troubleFigure("quarters_to_a_tenth", {
    ...{ label: "changes of a quarter until a tenth is left", unit: "changes", at: "dilution" },
    spread: exact(changesToReach(1, 0.1, 0, QUARTER) ?? 0),
    ...{ formula: "ln 0.1 / ln(1 - a quarter), rounded up", inputs: [workedOut("each change", "25 %")] },
    ...{ confidence: "computed", wouldChange: ["fresh carbon: it takes some substances, not all"] },
  });
  return {
    title: "What changes of water take out",
    rows: [
      { label: "A quarter of your water", value: [roughly(litres)] },
      { label: "Changes of a quarter until a tenth is left", value: [roughly(tenth)] },
    ],
    tables: [
      {
        title: "What is left of anything dissolved",
        columns: ["Changes of a quarter", "Left, %"],
        rows: each.map(({ times, figure }) => [[String(times)], [bare(figure)]]),
      },
    ],
    notes: ["What sits in rock, sand or silicone comes out again later: test before animals go back."],
    figures: [litres, tenth, ...each.map(({ figure }) => figure)],
  };
}

const leftFigure = (name: string, times: number, left: number): Figure =>
  troubleFigure(name, {
    ...{ label: `left after ${times} ${times === 1 ? "change" : "changes"} of a quarter`, unit: "%" },
    ...{ at: "dilution", spread: exact(100 * left), formula: "(1 - a quarter) to the power of the changes" },
    inputs: [workedOut("changes", String(times))],
    ...{ confidence: "computed", wouldChange: ["how well the new water mixes in"] },
  });

/** Water of the sump, that a pump can lift into the tank while its way down is shut. */
export function sumpPart({ facts }: { readonly facts: TankFacts }): NumbersPart | null {
  const most = facts.waterL.high - facts.displayL.low;
  const central = facts.waterL.central - facts.displayL.central;
  if (central < 1) return null;
  const sump = troubleFigure("sump_water", {
    ...{ label: "water beside the display, that a pump can lift into it", unit: "L", at: "overflow" },
    spread: { low: 0, central, high: Math.max(central, most) },
    formula: "all water less water of the display",
    inputs: [
      factInput(facts, "waterL", "all water", "L"),
      factInput(facts, "displayL", "water of the display", "L"),
    ],
    ...{ confidence: "computed", wouldChange: ["the sides of the sump", "where its pump runs dry"] },
  });
  return {
    title: "Water that can come over the edge",
    rows: [{ label: "Beside the display, at most", value: [roughly(sump)] }],
    ...{ tables: [], figures: [sump] },
    notes: ["Less by what the pump can't reach, and by what the display holds to its edge."],
  };
}
