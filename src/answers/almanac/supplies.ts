/**
 * Top-up water, salt and food: what runs out by use. Nothing in the daybook says how much is used or how much is left, so
 * that no date can be worked out; what is missing is said. Salinity that rises does say that the top-up lags.
 */
import { told } from "../sentence.ts";
import { type AlmanacScene, type Dated, duty, undated } from "./scene.ts";

/** Of 20 versions of the line that rise, before it is told. */
const USUALLY = 13;

export function supplyDates({ trends, facts, today }: AlmanacScene): Dated {
  const salinity = trends.quantities.find(({ id }) => id === "salinity_psu");
  const lags =
    salinity?.rising_of_20 != null && salinity.rising_of_20 >= USUALLY && salinity.way === "rising"
      ? salinity
      : null;
  const parts: Dated[] = [
    lags?.figures.rising != null
      ? {
          undated: [],
          dates: [
            duty({
              ...{ id: "top_up", kind: "top_up", on: today, every: 1, restsOn: "salinity rises" },
              do: ["Make up evaporated water with fresh water, little by little."],
              why: [
                [
                  "Salinity rises: ",
                  told(`usually, ${lags.rising_of_20} of 20`, lags.figures.rising),
                  ". Salt stays when water evaporates.",
                ],
              ],
              byWhen: ["Each day, until readings are level again."],
              wouldChange: ["Two readings of salinity that no longer rise."],
              leads: "trends",
            }),
          ],
        }
      : undated("top_up", "Making up evaporated water", [
          salinity === undefined
            ? "No salinity was read, and no entry says how much evaporates. Mark the level, and look each day."
            : "Salinity as read does not rise: what is made up keeps pace.",
        ]),
    undated("salt", "Salt", [
      "How much salt is left is nowhere logged. The water sums tell what a change takes.",
    ]),
    undated("food", "Food", [
      facts.feedGPerDay.origin === "assumed"
        ? "How much is fed was not said, so that how long a pack lasts can't be worked out."
        : `About ${Number((facts.feedGPerDay.central * 30).toPrecision(2))} g go in 30 days; how much is left is nowhere logged.`,
    ]),
  ];
  return {
    dates: parts.flatMap(({ dates }) => dates),
    undated: parts.flatMap(({ undated: none }) => none),
  };
}
