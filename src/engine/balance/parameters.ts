/**
 * Symbols of the balance's parameters, as docs/model/balance.md and facts/parameters/model-*.yaml write them.
 * Their values are arguments: calibration and ensembles vary them.
 */
export const PARAMETER_SYMBOLS = [
  ...["epsFilm", "epsSand", "epsFil", "Ik", "kapFilm", "kapFil", "muFilm", "muFil", "muMac"],
  ...["rFilm", "rFil", "rMac", "sFilm", "sFil", "sMac", "BsFilm", "BsFil", "vN", "vP"],
  ...["KAfilm", "KNfilm", "KPfilm", "KAfil", "KNfil", "KPfil", "KAmac", "KNmac", "KPmac"],
  ...["qNfilm", "qPfilm", "qNfil", "qPfil", "qNmac", "qPmac"],
  ...["muA", "muN", "bA", "bN", "KT", "KI", "gamA", "gamN"],
  ...["kW", "kK", "kS", "kD", "kQ", "kM", "kR", "kO"],
  ...["domW", "crumbW", "domK", "crumbK", "domD", "refD", "lamP"],
  ...["kSet", "shD", "kRes", "kFil", "kSkS", "kSkO"],
  ...["dSand", "dRock", "Kdn", "nfix", "Kfx", "kSorb", "capSorb", "kRock", "capRock", "KRock", "inoc"],
  ...["u0", "rationMax", "fN", "fP", "fC", "gN", "gP", "gC", "oN", "oC", "endoN", "maintFeed"],
  ...["fishNperG", "fishPperG", "fishCperG"],
  ...["rfG", "rfR", "rfS", "KgFilm", "rfFil", "KgFil", "Besc", "rfDet", "KgDet", "rfW", "KgW", "rfK", "KgK"],
  ...["faecD", "disl", "cG", "cR", "cS", "cF", "cD", "cQ", "cW", "cK"],
  ...["phi0", "hs", "hc", "m1", "mtox", "utox"],
  ...["q10dec", "q10alg", "q10anim", "q10A", "q10N"],
] as const;

type ParameterSymbol = (typeof PARAMETER_SYMBOLS)[number];
export type ParameterValues = Readonly<Record<ParameterSymbol, number>>;
