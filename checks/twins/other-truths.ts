/**
 * Truths that the model is not: what a forecast must stay honest against. Each departs in one thing.
 * Figures of the departures are judgement: chosen to be as large as keepers could meet.
 */
import { animalById } from "../../src/catalogue/index.ts";
import { type CrewKind, crewKind } from "../../src/engine/ahead/start.ts";
import type { ParameterValues } from "../../src/engine/balance/parameters.ts";
import type { Member } from "../../src/engine/larder/members.ts";

export interface DayState {
  readonly day: number;
  readonly po4MgPPerL: number;
}

export interface Departure {
  readonly name: string;
  readonly is: string;
  /** The truth's member, from the one drawn. */
  readonly member?: (member: Member) => Member;
  /** Parameters that the day has beside those drawn. */
  readonly eachDay?: (drawn: ParameterValues, state: DayState) => Partial<ParameterValues>;
  /** Who really lives there, from who is on record. */
  readonly crew?: (kinds: readonly CrewKind[]) => CrewKind[];
  /** What every kit shows, times the true value. */
  readonly kitTimes?: { readonly no3: number; readonly po4: number };
  /** Share of the living of every kind that a count sees. */
  readonly seesOf?: number;
}

export const OWN: Departure = { name: "own", is: "the model's own truths" };

/** Silicate of the source water is used up over a month: film grows ever slower, whatever the light. */
const SILICATE_LEFT_AFTER_A_DAY = 0.97;
const LEAST_SILICATE_SHARE = 0.4;

/** Algae that hold phosphorus for days: below this phosphate they stretch what a mg of carbon holds. */
const STRETCH_BELOW_MG_P_PER_L = 0.01;

export const OTHER_TRUTHS: readonly Departure[] = [
  {
    name: "silicate",
    is: "film is diatoms whose silicate runs out over the weeks",
    eachDay: ({ muFilm }, { day }) => ({
      muFilm: muFilm * Math.max(LEAST_SILICATE_SHARE, SILICATE_LEFT_AFTER_A_DAY ** day),
    }),
  },
  {
    name: "quota",
    is: "algae keep a store of phosphorus and stretch it when the water holds little",
    eachDay: ({ qPfilm }, { po4MgPPerL }) => ({
      qPfilm: qPfilm * (0.4 + 0.6 * Math.min(1, po4MgPPerL / STRETCH_BELOW_MG_P_PER_L)),
    }),
  },
  {
    name: "volume",
    is: "the tank holds a quarter less water than its keeper says",
    member: (member) => ({ ...member, inputs: { ...member.inputs, V: member.inputs.V * 0.75 } }),
  },
  {
    name: "misnamed",
    is: "the trochus and astraea are another kind, that eats about half as much, and other things",
    crew: (kinds) =>
      kinds.map((kind) => {
        const other = animalById.get("florida-cerith");
        const grazer = ["trochus-snail", "astraea-snail"].includes(kind.animal.id);
        return grazer && other !== undefined
          ? { ...crewKind({ ...other, id: kind.animal.id }, kind.residents) }
          : kind;
      }),
  },
  {
    name: "kits",
    is: "the nitrate kit shows half, the phosphate kit one and a half times what is there",
    kitTimes: { no3: 0.5, po4: 1.5 },
  },
  {
    name: "eye",
    is: "the keeper sees three of four whatever the kind, the buried ones too",
    seesOf: 0.75,
  },
];
