/**
 * What the seawater equations rest on, by the keys their docstrings use. How each was read (the page itself, a
 * copy in somebody's source, memory) is told in docs/model/seawater.md.
 */
export const SEAWATER_SOURCES = {
  "unesco-44":
    "Fofonoff & Millard 1983, Algorithms for computation of fundamental properties of seawater, " +
    "UNESCO Technical Papers in Marine Science 44",
  "culkin-smith-1980": "Culkin & Smith 1980, conductivity of seawater of salinity 35 at 15 °C: 42.914 mS/cm",
  "millero-poisson-1981": "Millero & Poisson 1981, one-atmosphere equation of state of seawater (EOS-80)",
  "garcia-gordon-1992": "Garcia & Gordon 1992, Limnology and Oceanography 37:1307-1312",
  "benson-krause-1984":
    "Benson & Krause 1984, oxygen in fresh and sea water, Limnology and Oceanography 29:620-632",
  "icao-atmosphere": "ICAO standard atmosphere, pressure against altitude",
  "clegg-whitfield-1995": "Clegg & Whitfield 1995, dissociation of ammonium in seawater, equation 18",
  "bower-bidwell-1978":
    "Bower & Bidwell 1978, Journal of the Fisheries Research Board of Canada 35:1012-1016, seawater table",
  "epa-1989": "US EPA 1989, Ambient water quality criteria for ammonia (saltwater), EPA 440/5-88-004",
  "takahashi-1982":
    "Takahashi, Williams & Bos 1982, GEOSECS Pacific Expedition 3, chapter 3: hydrogen ion activity",
  "dickson-1990": "Dickson 1990, dissociation of bisulfate in seawater",
  "dickson-riley-1979": "Dickson & Riley 1979, dissociation of hydrogen fluoride in seawater",
  "morris-riley-1966": "Morris & Riley 1966, sulfate to chlorinity in seawater",
  "riley-1965": "Riley 1965, fluoride to chlorinity in seawater",
  "lueker-2000": "Lueker, Dickson & Keeling 2000, Marine Chemistry 70:105-119: carbonic acid in seawater",
  "dickson-1990-borate": "Dickson 1990, Deep-Sea Research 37:755-766: boric acid in seawater",
  "millero-1995": "Millero 1995, Geochimica et Cosmochimica Acta 59:661-677: ionisation of water in seawater",
  "weiss-1974": "Weiss 1974, Marine Chemistry 2:203-215: CO2 in water and seawater",
  "mucci-1983": "Mucci 1983, American Journal of Science 283:780-799: solubility of aragonite in seawater",
  "uppstrom-1974": "Uppstrom 1974, Deep-Sea Research 21:161-162: boron to chlorinity in seawater",
  "riley-tongudai-1967":
    "Riley & Tongudai 1967, Chemical Geology 2:263-269: calcium to chlorinity in seawater",
  "millero-2008":
    "Millero, Feistel, Wright & McDougall 2008, Deep-Sea Research I 55:50-72: Reference Composition of seawater",
  "iupac-weights": "IUPAC, abridged standard atomic weights",
  "solubility-table": "Tables of solubility of salts in water at 20 °C",
} as const;

export type SeawaterSource = keyof typeof SEAWATER_SOURCES;
