"""Theil-Sen slopes and their 90 % limits by SciPy, for the invented series that trends-r.json holds.

Run:  python3 checks/recorded/trends.py > checks/recorded/trends-scipy.json
Needs SciPy (Debian: python3-scipy); not needed to run the checks, which read what was recorded.
"""

import json
import os

import numpy
import scipy
from scipy.stats import kendalltau, norm, theilslopes

HERE = os.path.dirname(os.path.abspath(__file__))
with open(os.path.join(HERE, "trends-r.json")) as file:
    series = json.load(file)["kendall"]

slopes = []
for one in series:
    days, values = numpy.array(one["days"]), numpy.array(one["values"])
    slope, _, low, high = theilslopes(values, days, 0.9)
    p = kendalltau(days, values, method="asymptotic").pvalue
    slopes.append(
        {
            "name": one["name"],
            "slope": float(slope),
            "low": float(low),
            "high": float(high),
            "abs_z": float(norm.isf(p / 2)),
        }
    )
print(
    json.dumps(
        {
            "about": "Answers of SciPy, recorded by checks/recorded/trends.py.",
            "made_with": f"SciPy {scipy.__version__}, NumPy {numpy.__version__}",
            "slopes": slopes,
        },
        indent=1,
    )
)
