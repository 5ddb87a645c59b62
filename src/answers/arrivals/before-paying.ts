/** What to look at before paying, per group, and what follows. Common practice, no source. */
import type { AnimalGroup } from "../../engine/types/animal.ts";

export interface BeforePaying {
  readonly id: string;
  readonly name: string;
  readonly groups: readonly AnimalGroup[];
  readonly look: readonly string[];
  readonly leave: string;
}

export const BEFORE_PAYING: readonly BeforePaying[] = [
  {
    ...{ id: "fish", name: "Fish", groups: ["fish"] },
    look: [
      "Ask to see it eat, and what it eats.",
      "It swims upright, breathes calmly with both gills, and turns to what moves.",
      "Skin and fins whole: no spots, dust, slime, pinched belly or cloudy eye.",
      "No other fish in that water ill or dead; ask whether copper is in it.",
    ],
    leave: "Leave it if it does not eat, or if any fish of that water has spots or breathes fast.",
  },
  {
    ...{ id: "snails", name: "Snails, conchs and slugs", groups: ["snail", "conch", "slug"] },
    look: [
      "It grips the glass and does not fall when the water moves.",
      "Turned over it pulls in and closes its door, or rights itself within minutes.",
      "Shell whole and lived in: look into it, and smell it.",
    ],
    leave: "Leave one that hangs out, does not close, or lies on the bottom among empty shells.",
  },
  {
    ...{ id: "hermits", name: "Hermit crabs", groups: ["hermit"] },
    look: [
      "Somebody lives in the shell: eyes and legs, not a cast skin.",
      "It pulls back when touched, with both claws and all walking legs.",
      "Ask for spare shells of its next sizes with it.",
    ],
    leave: "Leave one that is out of its shell or does not pull back.",
  },
  {
    ...{ id: "crabs", name: "Crabs, shrimps and pods", groups: ["crab", "shrimp", "pod"] },
    look: [
      "Limbs and feelers whole; one lost leg grows back, several are a hard journey.",
      "It walks or picks at food, and turns from a hand.",
      "Shrimps clear, not milky, unless they are about to moult.",
    ],
    leave: "Leave one that lies on its side or stays milky.",
  },
  {
    ...{ id: "stars", name: "Stars and urchins", groups: ["star", "urchin"] },
    look: [
      "Feet hold on; it moves within a minute or two.",
      "Arms, disc and spines whole: no white patch, no soft spot, no spines lying about.",
      "Turned over it rights itself.",
    ],
    leave: "Leave one with a lesion, limp arms or bald patches: it dies within weeks.",
  },
  {
    ...{ id: "cucumbers", name: "Sea cucumbers", groups: ["cucumber"] },
    look: ["Firm, whole skin, moves or feeds.", "It has thrown nothing out: no threads, no gut beside it."],
    leave: "Leave one that is slimy, split or limp: a dying one can poison a tank.",
  },
  {
    ...{ id: "corals", name: "Corals", groups: [] },
    look: [
      "Open, flesh to the edge of its skeleton, no bare white rim.",
      "No egg spirals, flatworms, nudibranchs or brown jelly on it or its plug.",
    ],
    leave: "Leave one with brown jelly or flesh that peels.",
  },
];
