# Molar masses and shares of elements by the library periodictable, printed as recorded/reagents.json holds them.
# With Debian's python3-periodictable: python3 checks/recorded/reagents.py > checks/recorded/reagents.json
import json

import periodictable
from periodictable import formula

FORMULAS = {
    "sodium_bicarbonate": "NaHCO3",
    "sodium_carbonate": "Na2CO3",
    "sodium_carbonate_1": "Na2CO3(H2O)1",
    "sodium_carbonate_10": "Na2CO3(H2O)10",
    "sodium_hydroxide": "NaOH",
    "calcium_hydroxide": "Ca(OH)2",
    "calcium_chloride": "CaCl2",
    "calcium_chloride_2": "CaCl2(H2O)2",
    "calcium_chloride_6": "CaCl2(H2O)6",
    "magnesium_chloride": "MgCl2",
    "magnesium_chloride_6": "MgCl2(H2O)6",
    "magnesium_sulfate": "MgSO4",
    "magnesium_sulfate_7": "MgSO4(H2O)7",
}
ELEMENTS = {"calcium": "Ca", "magnesium": "Mg", "sodium": "Na", "chlorine": "Cl"}


def ten(value):
    return float(f"{value:.10g}")


def point(reagent, text):
    of = formula(text)
    shares = {str(element): share for element, share in of.mass_fraction.items()}
    expected = {"molar_mass_g_per_mol": ten(of.mass)}
    for name, symbol in ELEMENTS.items():
        expected[f"{name}_mass_share"] = ten(shares.get(symbol, 0))
    return {"input": {"reagent": reagent, "formula": text}, "expected": expected}


block = {
    "what": "molar mass, and share of each element by mass",
    "library": f"periodictable {periodictable.__version__} (Debian python3-periodictable 1.6.0-1)",
    "functions": ["periodictable.formula(...).mass", "periodictable.formula(...).mass_fraction"],
    "conventions": "natural isotopes; water of the crystal written as (H2O)n",
    "tolerance": {
        "relative": 1e-4,
        "why": "its atomic weights (IUPAC of its year) have more digits than the abridged ones here",
    },
    "points": [point(reagent, text) for reagent, text in FORMULAS.items()],
}
about = (
    "Molar masses and shares by mass of the salts that alkalinity, calcium and magnesium are raised with, "
    "by a general library of the elements that knows nothing of aquaria."
)
print(json.dumps({"about": about, "made_on": "2026-11-27", "blocks": {"reagent_masses": block}}, indent=1))
