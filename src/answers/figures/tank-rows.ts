/** Readings and head counts of a tank as figures: what the keeper read and counted. docs/model/tank.md. */
import { latestReading } from "../../engine/larder/members.ts";
import type { Animal } from "../../engine/types/animal.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import { exact } from "../../engine/types/link.ts";
import type { AnimalCount, Reading, TankFacts } from "../../engine/types/tank.ts";

const READ: Readonly<Record<Reading["quantity"], readonly [label: string, unit: string]>> = {
  tan_mg_n_per_l: ["total ammonia as nitrogen", "mg/L"],
  no2_mg_n_per_l: ["nitrite as nitrogen", "mg/L"],
  no3_mg_n_per_l: ["nitrate as nitrogen", "mg/L"],
  po4_mg_p_per_l: ["phosphate as phosphorus", "mg/L"],
  salinity_psu: ["salinity", "psu"],
  temperature_c: ["temperature", "C"],
  ph: ["pH", "1"],
  alkalinity_meq_per_l: ["alkalinity", "meq/L"],
  calcium_mg_per_l: ["calcium", "mg/L"],
  magnesium_mg_per_l: ["magnesium", "mg/L"],
};

/** The latest reading of each quantity that has one. */
export function readingFigures({ readings }: TankFacts): Figure[] {
  return (Object.keys(READ) as Reading["quantity"][]).flatMap((quantity): Figure[] => {
    const reading = latestReading(readings, quantity);
    if (reading === null) return [];
    const [label, unit] = READ[quantity];
    const many = readings.filter((one) => one.quantity === quantity).length;
    const kit =
      reading.censored === null
        ? "within the doubt of its test"
        : `${reading.censored} what the test can tell`;
    return [
      {
        ...{ id: figureId.reading(quantity), label: `${label}, as read`, spread: reading.value, unit },
        working: {
          ...{ formulaKey: "tank.md#readings", formula: "the latest reading, in one unit" },
          inputs: [
            { label: "read on", value: reading.on ?? "a day not told: taken as today's", origin: "stated" },
            { label: "how it is taken", value: kit, origin: "derived" },
            { label: "readings of it in all", value: String(many), origin: "stated" },
          ],
          ...{ parameters: [], animals: [], confidence: "measured" },
          wouldChange: ["a second reading, some days apart", "a test with finer steps"],
        },
      },
    ];
  });
}

/** Heads of each kind that live there, and that are planned. */
export function headFigures(
  { present, planned }: TankFacts,
  animalById: ReadonlyMap<string, Animal>,
): Figure[] {
  return [
    ...counted(present, animalById, figureId.present, "heads that live here"),
    ...counted(planned, animalById, figureId.planned, "heads that you have planned"),
  ];
}

function counted(
  rows: readonly AnimalCount[],
  animalById: ReadonlyMap<string, Animal>,
  idOf: (animal: string) => string,
  label: string,
): Figure[] {
  return [...new Set(rows.map(({ id }) => id))].map((id) => {
    const mine = rows.filter((row) => row.id === id);
    return {
      ...{ id: idOf(id), label: `${animalById.get(id)?.commonName ?? id}: ${label}`, unit: "heads" },
      spread: exact(mine.reduce((sum, { count }) => sum + count, 0)),
      working: {
        ...{ formulaKey: "tank.md#heads", formula: "as you counted them, rows of one kind added up" },
        inputs: mine.map(({ count, on }) => ({
          ...{ label: on === null ? "counted, no date told" : `counted, there from ${on}` },
          ...{ value: `${count} heads`, origin: "stated" as const },
        })),
        ...{ parameters: [], animals: [], confidence: "measured" as const },
        wouldChange: ["a head count by torch, an hour after dark"],
      },
    };
  });
}
