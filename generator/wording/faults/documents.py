"""What the faults of the documents room say."""

from __future__ import annotations

from collections.abc import Mapping

from generator.wording.faults.fault import Fault

FAULTS: Mapping[str, Fault] = {
    "card-too-long": Fault(
        "The bench card of “%(job)s” does not fit on one side of paper.",
        "Name fewer sizes or shorter notes under “card:”, or shorten what stops the job.",
    ),
    "card-of-openings-too-long": Fault(
        "The bench card of “%(job)s” for opening %(openings)s does not fit on one side of paper.",
        "Name fewer sizes or shorter notes under “card:”, or shorten what stops the job.",
    ),
}
