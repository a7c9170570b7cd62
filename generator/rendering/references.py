"""Page numbers in the text, settled in one further pass over the sheets that show them.

WeasyPrint lays such sheets out three times: it keeps the counters wanted of a place among those wanted of the
sheet itself, and takes a new count of sheets for a change of every place's number.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from functools import lru_cache, partial
from typing import Any

Told = Callable[..., None]


@lru_cache(maxsize=1)
def referring_document() -> Any:
    """WeasyPrint's class of documents, with references to pages followed by `_want` and `_number`."""
    from weasyprint.document import Document

    class Referring(Document):  # type: ignore[misc]
        """A document whose layout hears of a place by its page number alone."""

        @classmethod
        def _build_layout_context(cls, *given: Any) -> Any:
            context = super()._build_layout_context(*given)
            follow(context.target_collector)
            return context

    return Referring


def follow(collector: Any) -> None:
    """Put the two steps below before those of the one who collects the targets of a document."""
    collector.collect_missing_counters = partial(_want, collector.collect_missing_counters)
    collector.cache_target_page_counters = partial(_number, collector.cache_target_page_counters)


def _want(
    told: Told,
    box: Any,
    token: str,
    again: Callable[..., None],
    own: Sequence[str],
    of_places: Mapping[str | None, Sequence[str]],
) -> None:
    # A place named by an attribute comes without its name.
    if None in of_places:
        own, of_places = [], {str(box.element.get("href")).removeprefix("#"): of_places[None]}
    told(box, token, again, own, of_places)


def _number(told: Told, place: str, counters: Mapping[str, Sequence[int]], *where: Any) -> None:
    told(place, {name: value for name, value in counters.items() if name != "pages"}, *where)
