"""How much a wood moves across the grain for each per cent of moisture, by species and sawing.

USDA Wood Handbook FPL-GTR-190 (2010), Table 13-5: coefficients of dimensional change, for 6 to 14 % moisture
content. Radial is the width of a quarter-sawn board, tangential that of a flat-sawn one. European species are
not in the table.
"""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal

FLAT, QUARTER = "flat", "quarter"
SAWN = (FLAT, QUARTER)

COEFFICIENTS: Mapping[str, Mapping[str, Decimal]] = {
    "red oak": {QUARTER: Decimal("0.00158"), FLAT: Decimal("0.00369")},
    "white oak": {QUARTER: Decimal("0.00180"), FLAT: Decimal("0.00365")},
    "white ash": {QUARTER: Decimal("0.00169"), FLAT: Decimal("0.00274")},
    "american beech": {QUARTER: Decimal("0.00190"), FLAT: Decimal("0.00431")},
    "sugar maple": {QUARTER: Decimal("0.00165"), FLAT: Decimal("0.00353")},
    "black cherry": {QUARTER: Decimal("0.00126"), FLAT: Decimal("0.00248")},
    "black walnut": {QUARTER: Decimal("0.00190"), FLAT: Decimal("0.00274")},
    "yellow birch": {QUARTER: Decimal("0.00256"), FLAT: Decimal("0.00338")},
    "white fir": {QUARTER: Decimal("0.00112"), FLAT: Decimal("0.00245")},
}
