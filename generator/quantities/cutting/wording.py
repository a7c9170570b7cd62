"""What a cutting plan comes to, in sentences."""

from __future__ import annotations

from collections import Counter
from decimal import ROUND_CEILING, ROUND_HALF_UP, Decimal

from generator.quantities.cutting.habit import Habit
from generator.quantities.cutting.orders import mm_text
from generator.quantities.cutting.plan import CuttingPlan
from generator.quantities.cutting.within import PlansWithin
from generator.wording import ENGLISH, Language

_HUNDREDTH = Decimal("0.01")


def outcome_words(plan: CuttingPlan, language: Language = ENGLISH) -> str:
    """What is bought, whether less would do, and what the usual percentage would have ordered."""
    if plan.totals is None:
        return ""
    parts = (_bought(plan, language), _proof(plan, language), _habit(plan, language))
    return " ".join(part for part in parts if part)


def _bought(plan: CuttingPlan, language: Language) -> str:
    listed = _lengths(plan, on_hand=False)
    kept = _lengths(plan, on_hand=True)
    if listed and kept:
        return language.say("Buy %(listed)s and use %(kept)s on hand.", listed=listed, kept=kept)
    if listed:
        return language.say("Buy %(listed)s.", listed=listed)
    return language.say("Use %(kept)s on hand; nothing is bought.", kept=kept)


def within_words(within: PlansWithin, language: Language = ENGLISH) -> str:
    """What the limits of the sizes may change about what is bought; that they change nothing is said too."""
    if within.longest.totals is None:
        return language.say("With pieces at the most their limits allow, no length of this stock is enough.")
    if not within.open:
        return language.say("The same stock does within the limits of the sizes.")
    least, most = (_stock(plan) for plan in (within.shortest, within.longest))
    return language.say(
        "Within the limits of the sizes anything from %(least)s to %(most)s may be needed.",
        least=least,
        most=most,
    )


def _stock(plan: CuttingPlan) -> str:
    """All that a plan cuts, on hand or bought."""
    parts = [part for on_hand in (True, False) if (part := _lengths(plan, on_hand=on_hand))]
    return " + ".join(parts)


def _lengths(plan: CuttingPlan, *, on_hand: bool) -> str:
    counts = Counter(bar.stock.length for bar in plan.bars if bar.on_hand == on_hand)
    return ", ".join(f"{count} × {mm_text(length)}" for length, count in sorted(counts.items()))


def _proof(plan: CuttingPlan, language: Language) -> str:
    priced = plan.totals is not None and plan.totals.cost is not None
    if plan.proven and priced:
        return language.say("No plan costs less: proved.")
    if plan.proven:
        return language.say("No plan needs less length: proved.")
    gap = plan.gap.quantize(_HUNDREDTH, rounding=ROUND_CEILING)
    if priced:
        return language.say("A better plan could cost at most %(gap)s %% less.", gap=gap)
    return language.say("A better plan could save at most %(gap)s %% of the length.", gap=gap)


def _habit(plan: CuttingPlan, language: Language) -> str:
    habit = plan.habit
    if habit is None:
        return ""
    return language.say(
        _verdict(plan, habit),
        percent=f"{habit.percent.normalize():f}",
        net=(Decimal(habit.net) / 2000).quantize(_HUNDREDTH, rounding=ROUND_HALF_UP),
        lengths=f"{habit.lengths} × {mm_text(habit.stock)}",
    )


_AS_MUCH = (
    "The usual habit, %(percent)s %% added to %(net)s m and taken up to whole lengths, would be %(lengths)s."
)
_MORE = (
    "The usual habit, %(percent)s %% added to %(net)s m and taken up to whole lengths, would be %(lengths)s: "
    "more than is needed."
)
_TOO_FEW = (
    "The usual habit, %(percent)s %% added to %(net)s m and taken up to whole lengths, would be %(lengths)s: "
    "too few, since it looks at no piece."
)


def _verdict(plan: CuttingPlan, habit: Habit) -> str:
    """Too few only where it is proved; lengths on hand and prices are another measure, so nothing is said."""
    if plan.totals is None or plan.totals.on_hand or plan.totals.cost is not None:
        return _AS_MUCH
    if habit.bought < plan.bound:
        return _TOO_FEW
    return _MORE if habit.bought > plan.spent else _AS_MUCH
