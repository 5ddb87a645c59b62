/** Invented data of the API's examples; checks/http makes a store of them and runs every one. */
export const EXAMPLE = {
  tank: "0b1f6f0e-52a4-4f0e-9f3e-2f6f7a1c0001",
  /** Taken away. */
  goneTank: "0b1f6f0e-52a4-4f0e-9f3e-2f6f7a1c0002",
  reading: "0b1f6f0e-52a4-4f0e-9f3e-2f6f7a1c0011",
  goneReading: "0b1f6f0e-52a4-4f0e-9f3e-2f6f7a1c0012",
  /** A growth. */
  entry: "0b1f6f0e-52a4-4f0e-9f3e-2f6f7a1c0021",
  goneEntry: "0b1f6f0e-52a4-4f0e-9f3e-2f6f7a1c0022",
  /** A file that was brought in. */
  act: "0b1f6f0e-52a4-4f0e-9f3e-2f6f7a1c0031",
  loss: "0b1f6f0e-52a4-4f0e-9f3e-2f6f7a1c0041",
  /** Two pictures of that loss, the second taken away. */
  picture: "0b1f6f0e-52a4-4f0e-9f3e-2f6f7a1c0051",
  gonePicture: "0b1f6f0e-52a4-4f0e-9f3e-2f6f7a1c0052",
  /** The day they are run on. */
  today: "2026-06-15",
} as const;

export const EXAMPLE_FACTS = {
  grazewell_tank: 1,
  name: "Kitchen (invented)",
  water_l: "200 L",
  first_seawater_on: "2026-01-10",
  rock: { start: "dry", rock_kg: "18 kg" },
  floor: { kind: "sand", depth_mm: "30 mm" },
  fish: [{ animal: "clownfish", count: 2 }],
  sightings: { film_glass: "patches", hair_algae: "trace" },
} as const;
