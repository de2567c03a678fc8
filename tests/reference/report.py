"""Print how our string voltages differ from pvlib's models over open module data: python tests/reference/report.py"""

from __future__ import annotations

import pandas as pd
from open_modules import PERCENTILES, distribution, listed, measured


def line(caption: str, differences: pd.Series) -> str:
    figures = "".join(f"{value:+8.2f}" for value in distribution(differences).values())
    return f"{caption:62}{len(differences):8}{figures}"


def main() -> None:
    modules = listed()
    crystalline, others = modules[modules.crystalline], modules[~modules.crystalline]
    sandia = measured()
    heads = "".join(f"{head:>8}" for head in ("mean", *(f"{percent} %" for percent in PERCENTILES)))
    print(f"{'ours over the model, difference in percent':62}{'modules':>8}{heads}")
    for caption, differences in (
        ("Uoc at -10 °C, coefficient, crystalline", crystalline.uoc_linear),
        ("  the same with the list's own adjusted coefficient", crystalline.uoc_adjusted),
        ("  bend of Uoc(T) by the diode equation", crystalline.curvature),
        ("Uoc at -10 °C, factor table, crystalline", crystalline.uoc_table),
        ("Umpp at 70 °C, γ - α, crystalline", crystalline.umpp),
        ("Umpp at 70 °C, coefficient of Uoc (wrong), crystalline", crystalline.umpp_by_beta),
        ("Umpp at 70 °C, γ - α, measured modules (Sandia)", sandia.umpp),
        ("Umpp at 70 °C, coefficient of Uoc (wrong), measured (Sandia)", sandia.beta),
        ("Uoc at -10 °C, coefficient, thin film (reported only)", others.uoc_linear),
        ("Umpp at 70 °C, γ - α, thin film (reported only)", others.umpp),
    ):
        print(line(caption, differences))
    print(f"Adjust of the list, crystalline: mean {crystalline.adjust.mean():+.1f} %")
    print(f"factor table below the coefficient method: {(crystalline.table_over_linear < 0).mean():.1%} of crystalline")


if __name__ == "__main__":
    main()
