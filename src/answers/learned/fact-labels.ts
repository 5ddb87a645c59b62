/** Facts that enter what is learned: words and unit. */
export const FACT_LABEL: Readonly<Record<string, readonly [label: string, unit: string]>> = {
  parRock: ["light at the rock", "µmol m-2 s-1"],
  lightHours: ["light", "h/d"],
  temperatureC: ["temperature", "°C"],
  rockKg: ["rock", "kg"],
  sandM2: ["sand", "m2"],
  glassM2: ["glass", "m2"],
  feedGPerDay: ["feed", "g/d"],
  feedNMgPerG: ["nitrogen in the feed", "mg/g"],
  feedPMgPerG: ["phosphorus in the feed", "mg/g"],
  uneatenShare: ["share that fish leave", "1"],
};
