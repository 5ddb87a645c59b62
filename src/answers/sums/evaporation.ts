/** What evaporates from an open surface, with all that is not known of the air over it. */
import { evaporationFromArea } from "../../engine/care/changes/evaporation.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import type { WorkingInput } from "../../engine/types/figure.ts";
import { celsius, practicalSalinity } from "../../engine/units/quantity.ts";
import { independently } from "./spread.ts";

/** Air over a tank: still under a lid's edge to a fan; and what the rule itself may miss by. Judgement. */
const AIR_MS = { low: 0.03, central: 0.1, high: 0.3 };
const RULE_DOUBT = 0.3;
/** Beyond it the water's own hold on its vapour is not worked out; it is 3 % there. */
const MOST_PSU = 45;

export const EVAPORATION_FORMULA =
  "(25 + 19 × air in m/s) kg an hour for each m2 and kg/kg that the air over the water is moister than the room's";
export const AIR_INPUT: WorkingInput = {
  ...{ label: "air over the water", value: "0.1 m/s (0.03 to 0.3)", origin: "assumed" },
};

interface Over {
  readonly areaM2: Spread;
  readonly temperature: Spread;
  readonly room: Spread;
  /** In per cent. */
  readonly humidity: Spread;
  readonly psu: number;
}

/** Litres a day. */
export function evaporatesFrom({ areaM2, temperature, room, humidity, psu }: Over): Spread {
  const salinity = practicalSalinity(Math.min(MOST_PSU, psu));
  const { low, central, high } = independently(
    [areaM2, temperature, room, humidity, AIR_MS],
    ([area = 0, t = 25, r = 21, share = 50, air = 0.1]) =>
      evaporationFromArea(
        area,
        { temperature: celsius(t), salinity },
        { temperature: celsius(r), humidity: share / 100 },
        air,
      ),
    RULE_DOUBT,
  );
  return { low: Math.max(0, low), central, high };
}
