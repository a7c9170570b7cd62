"""Where the files that travel with the tool stand: the shipped themes and the demo methods.

In a checkout they stand beside the package; a wheel carries copies inside this package.
"""

from __future__ import annotations

from pathlib import Path
from typing import Literal

Kind = Literal["themes", "methods"]
CARRIED = Path(__file__).parent
CHECKOUT = CARRIED.parent.parent


def shipped(kind: Kind) -> Path:
    """The folder of the shipped `kind`.

    Raises FileNotFoundError when neither the wheel's copy nor the checkout's folder is there.
    """
    for folder in (CARRIED / kind, CHECKOUT / kind):
        if folder.is_dir():
            return folder
    raise FileNotFoundError(f"The shipped {kind} are missing from {CARRIED} and {CHECKOUT}.")
