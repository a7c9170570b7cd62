"""Ratings of hazards, where a firm rates: inside its own scales, and not lowered by what cannot lower them.

A rating is never what makes a document pass. The conventions are common practice, no source.
"""

from __future__ import annotations

from generator.model.hazards import Hazard, Rating
from generator.model.house import HouseRules, RatingScales
from generator.model.method import Method
from generator.problems import ProblemLog

# Only these change how bad the harm is; what people do or wear changes how likely it is.
CHANGES_SEVERITY = frozenset({"eliminate", "substitute", "engineer"})
FEWEST_ALIKE = 3
MOST_STEPS = 2


def check_ratings(method: Method, house: HouseRules, log: ProblemLog) -> None:
    """Report ratings without scales, outside them, or lower than the controls can make them."""
    rated = [(hazard, hazard.rated) for hazard in method.hazards if hazard.rated]
    for hazard, rating in rated:
        if house.rating is None:
            log.add("rating-without-scales", hazard.places["rated"], hazard=hazard.hazard.value)
        elif _inside(rating, house.rating, log):
            _check_fall(hazard, rating, log)
            _check_stop(hazard, rating, house.rating, log)
    _check_alike(rated, log)


def _inside(rating: Rating, scales: RatingScales, log: ProblemLog) -> bool:
    whole = True
    for mark in (rating.before, rating.after):
        for kind, number, words in (
            ("likelihood", mark.likelihood, scales.likelihood),
            ("severity", mark.severity, scales.severity),
        ):
            if not 1 <= number <= len(words):
                log.add("rating-off-scale", number.span, kind=kind, number=number, most=len(words))
                whole = False
    return whole


def _check_fall(hazard: Hazard, rating: Rating, log: ProblemLog) -> None:
    before, after = rating.before, rating.after
    ranks = {control.rank for control in hazard.controls}
    if after.severity < before.severity and not ranks & CHANGES_SEVERITY:
        log.add("rating-severity", after.severity.span, hazard=hazard.hazard.value)
    if after.score > before.score:
        log.add("rating-rises", after.span, before=before.score, after=after.score)
    if before.likelihood - after.likelihood > MOST_STEPS:
        log.add("rating-leap", after.likelihood.span, warning=True, most=MOST_STEPS)
    if after.score < before.score and ranks == {"ppe"}:
        log.add("rating-by-ppe", after.span, hazard=hazard.hazard.value)


def _check_stop(hazard: Hazard, rating: Rating, scales: RatingScales, log: ProblemLog) -> None:
    band = scales.band(rating.after.score)
    if band.stop:
        log.add(
            "rating-stops",
            rating.after.span,
            hazard=hazard.hazard.value,
            score=rating.after.score,
            band=band.name.value,
        )


def _check_alike(rated: list[tuple[Hazard, Rating]], log: ProblemLog) -> None:
    left = {(rating.after.likelihood, rating.after.severity) for _, rating in rated}
    if len(rated) >= FEWEST_ALIKE and len(left) == 1:
        log.add("ratings-alike", rated[0][0].places["rated"], warning=True, count=len(rated))
