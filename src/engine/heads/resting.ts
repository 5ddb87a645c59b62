/** Dead, resting or moulted? What tells, group by group: for the form of losses and for the page of heads. From memory. */
import type { AnimalGroup } from "../types/animal.ts";

export interface Resting {
  readonly group: AnimalGroup;
  /** What living ones of the group do that looks like death. */
  readonly looksDead: string;
  /** What tells that it lives. */
  readonly lives: string;
  /** What tells that it is dead. */
  readonly dead: string;
  /** What to do while in doubt. */
  readonly doubt: string;
}

type Words = Omit<Resting, "group">;

const SNAIL: Words = {
  looksDead:
    "Snails rest for days, shut or half out, on glass, rock or upturned on sand; burrowers stay under for weeks.",
  lives: "It closes its lid when touched, holds on to the glass, or moves overnight.",
  dead: "It hangs out of its shell and does not draw back, the lid falls off, or it smells foul out of the water.",
  doubt: "Set it foot down on glass or rock, and look again in the morning.",
};
const CRUSTACEAN: Words = {
  looksDead:
    "What lies there may be a cast shell: light, hollow, split behind the head. After a moult it hides for up to ten days.",
  lives: "A cast shell is empty and see-through, with eyes and feelers on it; nothing smells.",
  dead: "The body is full and heavy, turns cloudy or orange, and smells foul out of the water.",
  doubt: "Leave a cast shell in: it is eaten again. Count by torch in ten days.",
};

const WORDS: Readonly<Record<AnimalGroup, Words>> = {
  snail: SNAIL,
  conch: SNAIL,
  hermit: {
    ...CRUSTACEAN,
    looksDead:
      "A hermit out of its shell on the sand is often a cast skin, or one that changes shells. After a moult it hides for up to ten days.",
  },
  crab: CRUSTACEAN,
  shrimp: CRUSTACEAN,
  star: {
    looksDead: "Stars rest for a day or two, flat or curled in holes; an arm may be lost and grow again.",
    lives: "Tube feet hold on or wave; it rights itself within an hour.",
    dead: "White patches spread, arms fall apart, it is limp and holds nothing.",
    doubt: "Look at its underside in the water, without lifting it into air.",
  },
  urchin: {
    looksDead: "Urchins stay in one place for days and drop a spine now and then.",
    lives: "Spines turn towards a shadow or a touch; tube feet hold on.",
    dead: "Spines fall in numbers, lie flat, or the shell is bare in patches.",
    doubt: "Look at it by night; with spines that sting, keep your hands off.",
  },
  cucumber: {
    looksDead:
      "Cucumbers lie still for days, shrink when starved, and may throw out their inside when frightened.",
    lives: "It draws together slowly when touched and makes droppings.",
    dead: "It is limp, slimy or falling apart. Some can poison a tank as they die: take it out at once, with carbon and a water change ready.",
    doubt: "Do not wait with one that falls apart; with a firm one look again in the evening.",
  },
  slug: {
    looksDead: "Slugs rest rolled up by day.",
    lives: "It crawls when turned over.",
    dead: "It drifts, falls apart or is covered with slime. Some give off toxin or ink: take it out at once.",
    doubt: "Shade it and look again in an hour.",
  },
  pod: {
    looksDead: "Cast skins of pods lie about in numbers.",
    lives: "By torch they run on glass and rock.",
    dead: "Single ones are not counted.",
    doubt: "Look at the glass by torch after lights-out.",
  },
  worm: {
    looksDead: "Worms stay in rock and sand for weeks.",
    lives: "Food by night brings them out.",
    dead: "One that lies in the open by day and does not draw back. Bristles hurt: use tongs, not fingers.",
    doubt: "Look by torch with food in the water.",
  },
  fish: {
    looksDead: "Many fish lie down, pale, or hide at night; wrasses sleep in the sand.",
    lives: "Gill covers move.",
    dead: "No gill moves for a minute. One that gasps is an emergency, not a death.",
    doubt: "Wait for the lights, and count at feeding.",
  },
};

export const restingOf = (group: AnimalGroup): Resting => ({ group, ...WORDS[group] });
