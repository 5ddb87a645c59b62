/**
 * Constants of one kind of animal as the balance needs them, and how they follow from its catalogue entry.
 * Equations: docs/model/balance.md, "Reserve and death".
 */
import { log } from "../numeric/elementary.ts";
import type { Animal } from "../types/animal.ts";
import type { Niche } from "./pools.ts";

export interface CrewSpecies {
  readonly id: string;
  /** Share of the diet by niche; need not sum to 1 (other foods lie outside the tank's larder). */
  readonly diet: Readonly<Partial<Record<Niche, number>>>;
  /** Greatest intake, mg C a head and day at 25 °C. */
  readonly Imax: number;
  /** Maintenance: carbon respired, mg C a head and day at 25 °C. */
  readonly R: number;
  /** Share of intake that is assimilated for use. */
  readonly eta: number;
  /** Share of intake that is absorbed (the rest is faeces). */
  readonly a: number;
  /** Full reserve, mg C a head. */
  readonly eFull: number;
  /** Break-even intake over greatest intake. */
  readonly beta: number;
  /** Background death rate, 1/d. */
  readonly m0: number;
  /** Carbon, nitrogen and phosphorus of a body without its reserve, mg. */
  readonly bC: number;
  readonly bN: number;
  readonly bP: number;
}

const DRY_SHARE_OF_SOFT_TISSUE = 0.2;
const CARBON_SHARE_OF_DRY = 0.4;
const BODY_CARBON_MG_PER_G = { crustacean: 82.5, fish: 100, other: 25 } as const;
const CRUSTACEANS: ReadonlySet<string> = new Set(["hermit", "crab", "shrimp", "pod"]);
/** Share of maintenance that a fasting animal draws from its reserve (φ0 of the balance, as the specification sets it). */
const FASTING_SHARE = 0.4;

/** Carbon of a whole body, mg. Evidence: docs/model/balance.md (soft-tissue route of the catalogue; factor 2 open). */
export function bodyCarbonMg(animal: Animal): number {
  if (animal.softTissueG !== null) {
    return animal.softTissueG.central * 1000 * DRY_SHARE_OF_SOFT_TISSUE * CARBON_SHARE_OF_DRY;
  }
  const kind = CRUSTACEANS.has(animal.group) ? "crustacean" : animal.group === "fish" ? "fish" : "other";
  return animal.liveWetMassG.central * BODY_CARBON_MG_PER_G[kind];
}

/** The balance's constants of a catalogue animal. */
export function speciesFrom(animal: Animal): CrewSpecies {
  const { diet: shelves, breakEvenIntakeMgCPerDay: breakEven, maintenanceMgCPerDay: R } = animal;
  const { bubble_algae: _sightingsOnly, ...diet } = shelves;
  const Imax = Math.max(animal.intakeMgCPerDay.high, 1.05 * breakEven);
  const eta = R / breakEven;
  const eFull = animal.starvationToleranceDays.central * R * FASTING_SHARE;
  const bodyC = bodyCarbonMg(animal);
  const bN = bodyC / 4.5;
  return {
    id: animal.id,
    diet,
    Imax,
    R,
    eta,
    a: Math.max(animal.absorptionEfficiency, eta),
    eFull,
    beta: breakEven / Imax,
    m0: -log(1 - animal.annualLossFraction.central) / 365,
    bC: Math.max(0.3 * bodyC, bodyC - eFull),
    bN,
    bP: bN / 9,
  };
}
