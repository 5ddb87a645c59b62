/**
 * What to do first when something is wrong: one list a trouble, for somebody under stress. People first, one action a
 * line, at most seven lines of which the last two say when to stop and whom to call. Plain words, no metaphor, no number
 * of the engine: a list is the same for every tank and comes without one. First aid as it is commonly taught, no source.
 */
import type { CrisisId } from "./list-ids.ts";

export const MOST_LINES = 7;
/** Two lines of large type on a screen of 360 px. */
export const LONGEST_LINE = 62;

export interface CrisisList {
  /** What is seen, as on the entry page. */
  readonly see: string;
  readonly about: "people" | "house" | "animals" | "water" | "equipment";
  readonly lines: readonly string[];
}

export const CRISIS_GROUPS: Readonly<Record<CrisisList["about"], string>> = {
  people: "Somebody is hurt",
  house: "House and power",
  animals: "Animals",
  water: "Water",
  equipment: "Equipment",
};

export const CRISIS_LISTS: Readonly<Record<CrisisId, CrisisList>> = {
  person: {
    ...{ see: "Electric shock", about: "people" },
    lines: [
      "Don't touch them. Switch off at the fuse box.",
      "Call the emergency number now.",
      "Not breathing: press hard and fast on the chest.",
      "Keep everybody out of the water.",
      "See a doctor today, even after a small shock.",
      "Stop when help takes over. Leave the power off.",
      "Call a licensed electrician before you switch on.",
    ],
  },
  ill: {
    ...{ see: "Ill after rock or coral", about: "people" },
    lines: [
      "All out of the room, pets too. Windows open.",
      "Touch no rock or coral. No hot water on it.",
      "Eyes: rinse with clean water for 15 minutes.",
      "Clothes and gloves off. Wash skin with soap.",
      "Say it may be palytoxin, from button corals.",
      "Stop if breath is short: emergency number.",
      "Call the poison line or a doctor now.",
    ],
  },
  sting: {
    ...{ see: "Sting, bite or wound", about: "people" },
    lines: [
      "Breath short, face swells: emergency number.",
      "Fish spine: hot water you can bear, 45 °C at most.",
      "Coral or jelly sting: rinse with seawater, don't rub.",
      "Cut or bite: press, wash with clean water, cover.",
      "Leave a deep spine for the doctor.",
      "Stop waiting if it swells, is hot, or you get fever.",
      "Call a doctor today. Say which animal it was.",
    ],
  },
  "water-power": {
    ...{ see: "Water on the floor, sparks", about: "house" },
    lines: [
      "Stay out of the water. Switch off at the fuse box.",
      "Smoke or fire: all out, emergency number.",
      "A cracked tank can fall: stand clear.",
      "Off and dry: animals into buckets of tank water.",
      "A battery air stone keeps them for hours.",
      "Stop when power is off and nobody is near water.",
      "Call a licensed electrician before you switch on.",
    ],
  },
  "power-cut": {
    ...{ see: "Power cut", about: "house" },
    lines: [
      "Torch, dry hands. Unplug the heater.",
      "Battery air stone in. None: pour water by the jug.",
      "Don't feed. Lid open a little.",
      "Cold room: blankets round the tank.",
      "Closed filter off 2 hours: empty it before it runs.",
      "Stop when power holds. Test ammonia an hour later.",
      "Call a licensed electrician if it trips again.",
    ],
  },
  pumps: {
    ...{ see: "Pumps stopped", about: "equipment" },
    lines: [
      "Dry hands. Unplug the pump before you touch it.",
      "Move the surface now: air stone, or a jug.",
      "Don't feed. Lid off, window open.",
      "Clear its inlet. Hot: let it cool.",
      "Fish gasp: change a fifth, as warm and as salty.",
      "Stop when the surface moves and fish are calm.",
      "Call a licensed electrician if plug or pump is hot.",
    ],
  },
  gasping: {
    ...{ see: "Animals gasp", about: "animals" },
    lines: [
      "Dry hands. Unplug what you will touch.",
      "Move the surface: pump up, air stone in.",
      "Window open. No spray, paint or smoke in the room.",
      "Don't feed. Take out what is dead.",
      "Test ammonia. It shows: change a quarter.",
      "Stop when they breathe calmly. Test in an hour.",
      "Call an aquatic vet if they still gasp.",
    ],
  },
  dead: {
    ...{ see: "Animals dead or dying", about: "animals" },
    lines: [
      "Dry hands, plug out, gloves. Take out the dead.",
      "Test ammonia, salinity and temperature.",
      "Ammonia shows: don't feed, change a quarter.",
      "Salt or warmth is off: bring it back over a day.",
      "Add nothing new, and no medicine yet.",
      "Stop when two tests an hour apart are the same.",
      "Call an aquatic vet if more of them fail.",
    ],
  },
  missing: {
    ...{ see: "An animal is missing", about: "animals" },
    lines: [
      "Look on the floor first, and in the overflow.",
      "Test ammonia now, and again tonight.",
      "After dark look with a torch, behind the rock.",
      "Found dead: plug out, gloves, take it out.",
      "Not found: don't pull the rock apart.",
      "Stop when two tests a day apart show none.",
      "Call an aquatic vet if others fail.",
    ],
  },
  cucumber: {
    ...{ see: "Sea cucumber dying", about: "animals" },
    lines: [
      "Gloves, glasses. Hands off your eyes and mouth.",
      "Unplug the pump that holds it, then reach in.",
      "Take it out in a bucket, with water round it.",
      "Fish gasp: into other seawater, now.",
      "Change half. Fresh carbon in the flow.",
      "Stop when fish breathe calmly for an hour.",
      "Call an aquatic vet. You feel ill: call a doctor.",
    ],
  },
  ammonia: {
    ...{ see: "Ammonia shows", about: "water" },
    lines: [
      "Don't feed. Add no animal.",
      "Dry hands, plug out, gloves. Take out what is dead.",
      "Change a quarter, as warm and as salty.",
      "No buffer: a higher pH makes it more poisonous.",
      "Test in two hours. It shows: change a quarter.",
      "Stop when two tests a day apart show none.",
      "Call an aquatic vet if animals gasp or lie down.",
    ],
  },
  warm: {
    ...{ see: "Water too warm", about: "water" },
    lines: [
      "Dry hands. Unplug the heater, let it cool.",
      "Lights off, lid off. Move the surface.",
      "A fan over the water, its cable kept dry.",
      "No ice in it. One degree an hour at most.",
      "Look at the thermometer every half hour.",
      "Stop at 26 °C. Use that heater no more.",
      "Call a licensed electrician if it stuck or cracked.",
    ],
  },
  cold: {
    ...{ see: "Water too cold", about: "water" },
    lines: [
      "Heater cracked: hands out, fuse box off.",
      "Warm the room. Blankets round the tank.",
      "A spare heater: under water first, then plug in.",
      "No hot water in it. One degree an hour at most.",
      "Don't feed until it is warm.",
      "Stop at 24 °C, and watch it for a day.",
      "Call a licensed electrician if it tripped or cracked.",
    ],
  },
  salinity: {
    ...{ see: "Too salty or too thin", about: "water" },
    lines: [
      "Dry hands. Unplug the top-off.",
      "Measure again, with a second instrument.",
      "Too salty: purified water in, a cup at a time.",
      "Too thin: top up with salt water. No dry salt in it.",
      "Change 1 psu a day at most (0.001 by gravity).",
      "Stop when it reads 33 to 36 psu.",
      "Call an aquatic vet if animals lie down or peel.",
    ],
  },
  "top-off": {
    ...{ see: "Top-off stuck on", about: "equipment" },
    lines: [
      "Wet floor: keep off it, fuse box off.",
      "Dry hands. Unplug the top-off pump.",
      "Measure salinity after an hour of mixing.",
      "Too thin: raise it 1 psu a day, no faster.",
      "Limewater: gloves. pH over 8.6: change a quarter.",
      "Stop when it reads the same twice.",
      "Call an aquatic vet if animals lie still.",
    ],
  },
  overflow: {
    ...{ see: "Overflow blocked", about: "equipment" },
    lines: [
      "Stand dry. Unplug the return pump, or fuse box off.",
      "Wet plug or socket: hands off, fuse box off.",
      "Power off: take out the snail or weed.",
      "Put a guard on it before the pump runs.",
      "It ran dry or hot: leave that pump unplugged.",
      "Stop when it drains for ten minutes as you watch.",
      "Call a licensed electrician if a plug got wet.",
    ],
  },
  chlorine: {
    ...{ see: "Chlorine in new water", about: "water" },
    lines: [
      "Strong smell: out of the room, windows open.",
      "Pour in no more of it.",
      "Dechlorinator for the whole tank, as labelled.",
      "Air stone in. Fresh carbon in the flow.",
      "Test ammonia now and tomorrow: chloramine.",
      "Stop when a test shows none and fish are calm.",
      "Call an aquatic vet if fish gasp.",
    ],
  },
  alkalinity: {
    ...{ see: "Alkalinity overdosed", about: "water" },
    lines: [
      "Buffer burns: gloves. Eyes: rinse 15 minutes.",
      "Dry hands. Unplug the dosing pump.",
      "Test alkalinity and pH twice. No acid into it.",
      "No calcium or magnesium until it is down.",
      "pH over 8.6: change a quarter, else a tenth a day.",
      "Stop when it falls by itself.",
      "Call an aquatic vet if animals fail.",
    ],
  },
  sand: {
    ...{ see: "Deep sand stirred, bad smell", about: "water" },
    lines: [
      "Windows open. Dizzy: out of the room.",
      "Hands out. Leave the sand alone.",
      "Move the surface: pumps up, air stone in.",
      "Fish gasp: into other seawater, now.",
      "Change a quarter. Fresh carbon in the flow.",
      "Stop when the smell is gone and fish are calm.",
      "Call an aquatic vet. Still dizzy: call a doctor.",
    ],
  },
  poison: {
    ...{ see: "Poison in the water", about: "water" },
    lines: [
      "Children and pets away. Keep the bottle.",
      "Skin or eyes: rinse for 15 minutes.",
      "Gloves, plug out. Take out what gave it off.",
      "Animals into other seawater, as warm and as salty.",
      "Change half. Fresh carbon in the flow.",
      "Stop if you don't know what it is: hands out.",
      "Call the poison line. Animals: an aquatic vet.",
    ],
  },
  medicine: {
    ...{ see: "Medicine or copper in it", about: "water" },
    lines: [
      "Pack away from children. Read it. Gloves on.",
      "Snails, crabs, shrimps into other seawater.",
      "Fresh carbon in the flow.",
      "Change a quarter. Test copper again tomorrow.",
      "Add no animal until a test shows none.",
      "Stop if an animal gets worse as you do it.",
      "Call an aquatic vet before you treat again.",
    ],
  },
  slime: {
    ...{ see: "Slime on everything", about: "water" },
    lines: [
      "Wait: slime by itself kills few animals.",
      "Gloves. Keep it from your eyes and mouth.",
      "Siphon off what comes off.",
      "Test nitrate and phosphate. Feed less for a week.",
      "Add no animal to eat it before you know its name.",
      "Stop when animals breathe and feed as usual.",
      "Call an aquatic vet if not. You feel ill: a doctor.",
    ],
  },
};

/** What is said below every list. */
export const AFTERWARDS =
  "Write down since when it was so and what had changed: a vet will ask. Never release animals or tank water into the wild: return them, rehome them, or ask a shop.";
export const BEFORE = "Before you reach in: dry hands, and unplug what you will touch.";
