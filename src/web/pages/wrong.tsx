/**
 * Something is wrong: static, plain words, for somebody under stress. People first, one action a line, at most seven
 * lines a list; each ends with when to stop and whom to call. No metaphor, no script, no engine.
 */
import { type Page, to } from "../page.ts";

interface List {
  readonly id: string;
  readonly see: string;
  /** At most seven; the last two say when to stop and whom to call. */
  readonly lines: readonly string[];
}

const VET = "Call an aquatic vet if animals still fail after that.";

export const CRISIS_LISTS: readonly List[] = [
  {
    id: "person",
    see: "Somebody is hurt",
    lines: [
      "Shock: don't touch them. Switch off at the fuse box first.",
      "Then call the emergency number. Help them breathe if you can.",
      "Sting, bite, or ill after working on rock or coral: leave the room, wash.",
      "Call a doctor or the poison line. Say which animal it was.",
      "Cut: wash with clean water at once, and cover it.",
      "Stop with the tank until the person is seen to.",
      "Call a doctor if a wound swells, is hot, or you feel ill.",
    ],
  },
  {
    id: "water-power",
    see: "Water on the floor, sparks, a burnt smell",
    lines: [
      "Don't step into the water. Switch off at the fuse box.",
      "Keep others away. A tank that cracks can fall: stand clear.",
      "When it is off and dry: move animals to buckets of tank water.",
      "An air stone on a battery keeps them for hours.",
      "Stop when the power is off and nobody is near the water.",
      "Call a licensed electrician before you switch it on again.",
    ],
  },
  {
    id: "gasping",
    see: "Animals gasp at the surface",
    lines: [
      "Dry hands. Unplug what you will touch.",
      "Move the surface: turn a pump up, add an air stone.",
      "Stop feeding. Take out what is dead.",
      "Test ammonia and temperature now.",
      "Ammonia shows: change a quarter, with water as warm and as salty.",
      "Stop when they breathe calmly. Test again in an hour.",
      VET,
    ],
  },
  {
    id: "dead",
    see: "Animals are dead or dying",
    lines: [
      "Gloves on, dry hands, plug out. Take out what is dead.",
      "Test ammonia, salinity and temperature.",
      "Ammonia shows: stop feeding, change a quarter of the water.",
      "Salinity or warmth is off: bring it back slowly, over a day.",
      "Add nothing new, and no medicine yet.",
      "Stop when two tests an hour apart are the same.",
      VET,
    ],
  },
  {
    id: "warm",
    see: "The water is too warm or too cold",
    lines: [
      "Dry hands. Unplug the heater before you touch it.",
      "Too warm: lights off, surface moving, a fan over the water. No ice in it.",
      "Too cold: a second heater, or a warm room; 1 °C an hour at most.",
      "Watch the animals breathe. Look at the thermometer every half hour.",
      "Stop at 25 °C or so.",
      "Call an electrician for a heater that sticks or is cracked.",
    ],
  },
  {
    id: "medicine",
    see: "Medicine or copper is in the water",
    lines: [
      "Read the pack. Keep it away from children; gloves on.",
      "Move snails, crabs and shrimps to other seawater, as warm and as salty.",
      "Fresh carbon in a bag where the water flows.",
      "Change a quarter of the water. Test copper again tomorrow.",
      "Add no animal until a test shows that none is left.",
      "Stop if an animal gets worse as you do it.",
      "Call an aquatic vet before you treat again.",
    ],
  },
  {
    id: "slime",
    see: "Slime, or a film over everything",
    lines: [
      "Wait before you treat: slime by itself kills few animals.",
      "Gloves on. Siphon off what comes off; keep it from your eyes and mouth.",
      "Test nitrate and phosphate. Feed less for a week.",
      "Add no animal to eat it until you know what it is.",
      "Stop when animals breathe and feed as usual.",
      "Call an aquatic vet if they don't, or a doctor if you feel ill.",
    ],
  },
];

interface WrongView {
  /** The tank that the reader came from. */
  readonly tank: { readonly id: string; readonly name: string } | null;
}

export function wrongPage({ tank }: WrongView): Page {
  return {
    title: "Something is wrong",
    tank: null,
    here: null,
    body: (
      <div class="crisis">
        <h1>Something is wrong</h1>
        <p>
          <strong>Before you reach in: dry hands, and unplug what you will touch.</strong>
        </p>
        <h2 id="see">What do you see?</h2>
        <ul>
          {CRISIS_LISTS.map(({ id, see }) => (
            <li key={id}>
              <a href={`#${id}`}>{see}</a>
            </li>
          ))}
        </ul>
        {CRISIS_LISTS.map(({ id, see, lines }) => (
          <section key={id} id={id} aria-labelledby={`${id}-see`}>
            <h2 id={`${id}-see`}>{see}</h2>
            <ol>
              {lines.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ol>
            <p>
              <a href="#see">Something else</a>
            </p>
          </section>
        ))}
        <h2>Afterwards</h2>
        <p>
          Never release animals or tank water into the wild: return them, rehome them, or ask a shop. Write
          down since when it was so and what had changed; a vet will ask.
        </p>
        {tank === null ? null : (
          <p>
            <a href={to.tank(tank.id)}>Back to {tank.name}</a>
          </p>
        )}
      </div>
    ),
  };
}
