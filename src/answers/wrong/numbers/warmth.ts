/** How fast this tank warms by a heater that sticks, and cools without one. */
import {
  coolingHours,
  hoursToCool,
  JOULE_PER_LITRE,
  LOSS_W_PER_M2,
  outsideM2,
  settlesAboveRoom,
  warmingPerHour,
} from "../../../engine/care/trouble/warmth.ts";
import { oxygenSaturation } from "../../../engine/seawater/oxygen.ts";
import { SEAWATER_SOURCES } from "../../../engine/seawater/sources.ts";
import type { Spread } from "../../../engine/types/estimate.ts";
import type { Figure } from "../../../engine/types/figure.ts";
import { exact, factInput, linkTo, spreadText, workedOut } from "../../../engine/types/link.ts";
import type { TankFacts } from "../../../engine/types/tank.ts";
import { celsius, practicalSalinity } from "../../../engine/units/quantity.ts";
import { bare, type NumbersPart, roughly, toldOf, troubleFigure } from "./shape.ts";

const HEATERS_W = [50, 100, 200, 300] as const;
const ROOMS_C = [10, 15, 18] as const;
/** Below this most reef animals slow down, above that they gasp; tox.temp_range. */
const TOO_COLD_C = 22;
const TOO_WARM_C = 30;

export function heaterPart({ facts }: { readonly facts: TankFacts }): NumbersPart {
  const { waterL } = facts;
  const water = factInput(facts, "waterL", "water", "L");
  const each = HEATERS_W.map((watts) => {
    const rate = troubleFigure(`heater_${watts}.per_hour`, {
      ...{ label: `warming by a heater of ${watts} W that sticks`, unit: "C/h", at: "warmth" },
      spread: {
        low: warmingPerHour(watts, waterL.high),
        central: warmingPerHour(watts, waterL.central),
        high: warmingPerHour(watts, waterL.low),
      },
      formula: "heat of the heater / heat that the water takes for a degree; nothing lost",
      inputs: [
        workedOut("heater", `${watts} W`),
        water,
        workedOut("heat for a litre and degree", `${JOULE_PER_LITRE} J`),
      ],
      ...{ confidence: "computed", wouldChange: ["the heater's watts", "the water in the tank"] },
    });
    const above = (litres: number, loss: number) => settlesAboveRoom(watts, litres, loss);
    const settles = troubleFigure(`heater_${watts}.settles`, {
      ...{ label: `warmth above the room that a heater of ${watts} W ends at`, unit: "C", at: "warmth" },
      spread: {
        low: above(waterL.high, LOSS_W_PER_M2.high),
        central: above(waterL.central, LOSS_W_PER_M2.central),
        high: above(waterL.low, LOSS_W_PER_M2.low),
      },
      formula: "heater / (loss of a square metre x outside of the tank)",
      inputs: [workedOut("heater", `${watts} W`), water, ...lossInputs(waterL.central)],
      ...{ confidence: "judgement", wouldChange: ["a lid, and how it is aired", "the heater's watts"] },
    });
    return { watts, rate, settles };
  });
  const oxygen = saturation("oxygen_now", "oxygen that the water holds now", facts.temperatureC, facts);
  const warm = saturation("oxygen_warm", `oxygen that it holds at ${TOO_WARM_C} C`, exact(TOO_WARM_C), facts);
  return {
    title: "A heater that never stops",
    rows: [
      { label: "Oxygen that the water holds now", value: [toldOf(oxygen)] },
      { label: `Oxygen that it holds at ${TOO_WARM_C} °C`, value: [toldOf(warm)] },
    ],
    tables: [
      {
        title: "By the heater's watts",
        columns: ["Heater, W", "Warming at first, °C an hour", "Ends above the room by, °C"],
        rows: each.map(({ watts, rate, settles }) => [[String(watts)], [bare(rate)], [bare(settles)]]),
      },
    ],
    notes: [
      "Lamps and pumps add to it. The loss to the room is judged: a lid keeps warmth in, a fan takes it out.",
    ],
    figures: [oxygen, warm, ...each.flatMap(({ rate, settles }) => [rate, settles])],
  };
}

const lossInputs = (litres: number) => [
  workedOut("loss of a square metre", `${spreadText(LOSS_W_PER_M2, "W/K")}: judgement`),
  workedOut("outside of a box of that water", `${outsideM2(litres).toFixed(2)} m2`),
];

function saturation(name: string, label: string, t: Spread, facts: TankFacts): Figure {
  const at = (warmth: number) =>
    oxygenSaturation(
      celsius(Math.min(40, Math.max(0, warmth))),
      practicalSalinity(Math.min(42, facts.salinityPsu.central)),
    );
  return troubleFigure(name, {
    ...{ label, unit: "mg/L", at: "warmth", formula: "balance of seawater with moist air" },
    spread: { low: at(t.high), central: at(t.central), high: at(t.low) },
    inputs: [
      workedOut("temperature", spreadText(t, "C")),
      factInput(facts, "salinityPsu", "salinity", "psu"),
    ],
    references: [SEAWATER_SOURCES["garcia-gordon-1992"]],
    ...{ confidence: "computed", wouldChange: ["the temperature", "the height above the sea"] },
  });
}

export function coolingPart({ facts }: { readonly facts: TankFacts }): NumbersPart {
  const { waterL, temperatureC } = facts;
  const pace = troubleFigure("cooling_hours", {
    ...{ label: "hours in which the distance to the room falls to about a third", unit: "h", at: "warmth" },
    spread: {
      low: coolingHours(waterL.low, LOSS_W_PER_M2.high),
      central: coolingHours(waterL.central, LOSS_W_PER_M2.central),
      high: coolingHours(waterL.high, LOSS_W_PER_M2.low),
    },
    formula: "heat that the water takes for a degree / (loss of a square metre x outside of the tank)",
    inputs: [factInput(facts, "waterL", "water", "L"), ...lossInputs(waterL.central)],
    ...{ confidence: "judgement", wouldChange: ["blankets round the tank", "the water in the tank"] },
  });
  const from = temperatureC.central;
  const rooms = ROOMS_C.map((room) => {
    const hours = (h: number) => hoursToCool(from, TOO_COLD_C, room, h) ?? 0;
    return {
      room,
      figure: troubleFigure(`cool_in_${room}`, {
        ...{
          label: `hours until it has cooled to ${TOO_COLD_C} C in a room of ${room} C`,
          unit: "h",
          at: "warmth",
        },
        spread: {
          low: hours(pace.spread.low),
          central: hours(pace.spread.central),
          high: hours(pace.spread.high),
        },
        formula: "cooling hours x ln((now - room) / (22 C - room))",
        inputs: [
          linkTo(pace),
          factInput(facts, "temperatureC", "temperature now", "C"),
          workedOut("room", `${room} C`),
        ],
        ...{ confidence: "judgement", wouldChange: ["the room's warmth", "blankets round the tank"] },
      }),
    };
  });
  return {
    title: "No heater",
    rows: [{ label: "Its distance to the room falls to about a third in", value: [roughly(pace)] }],
    tables: [
      {
        title: `Hours until ${TOO_COLD_C} °C, by the room`,
        columns: ["Room, °C", `Hours until ${TOO_COLD_C} °C`],
        rows: rooms.map(({ room, figure }) => [[String(room)], [bare(figure)]]),
      },
    ],
    notes: ["Blankets halve the loss or better. A large tank is slower than a small one."],
    figures: [pace, ...rooms.map(({ figure }) => figure)],
  };
}
