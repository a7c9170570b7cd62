"""Guides and index in further languages: the English text governs, and every page says so and leads to it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import lru_cache

from generator.documents.blocks import Block, Document, Edition, Link, Part, Text
from generator.documents.cutting import plan_orders
from generator.documents.figures import orders_of
from generator.documents.guide import compose_guide
from generator.documents.index import Listed, compose_index
from generator.documents.task import Task
from generator.drawings.orders import Order
from generator.drawings.registry import draw
from generator.drawings.svg import Picture
from generator.model.translations import catalogue_in, method_in
from generator.problems import ProblemLog
from generator.quantities.work import work_out
from generator.rendering.html import render_page
from generator.rendering.themes import Theme
from generator.wording import ENGLISH, Language
from generator.wording.languages import language as opened

UP, WORKINGS = "../", "annex-workings"
ASSETS = f"{UP}assets/"


def editions(name: str, tags: Sequence[str], here: Language = ENGLISH) -> tuple[Edition, ...]:
    """The languages of the page called `name`, as its edition in `here` leads to them; none for one alone.

    A translation stands in a folder named after its language, under the same name.
    """
    if not tags:
        return ()
    languages = (ENGLISH, *map(opened, tags))
    return tuple(
        Edition(
            tag=one.tag,
            name=one.conventions.name,
            href=_way(name, one, here),
            here=one.tag == here.tag,
        )
        for one in languages
    )


def _way(name: str, to: Language, here: Language) -> str:
    up = "" if here.governs else UP
    return f"{up}{name}" if to.governs else f"{up}{to.tag}/{name}"


# A long-lived process composes the same drawings at every save of a sentence.
@lru_cache(maxsize=512)
def drawing(order: Order, language: Language) -> Picture:
    """A drawing in a language."""
    return draw(order.name, dict(order.values), order.width, language)


def task_in(language: Language, task: Task) -> Task:
    """A guide's task put into a language, its drawings drawn anew, since their labels take other room."""
    project = replace(task.project, catalogue=catalogue_in(language, task.project.catalogue))
    method = method_in(language, task.method, task.project.translation(task.method, language.tag))
    ledger = work_out(method, None, project, ProblemLog())
    orders = dict.fromkeys((*task.pictures, *orders_of(ledger), *plan_orders(task.plans, language)))
    pictures = {order: drawing(order, language) for order in orders}
    return replace(task, project=project, ledger=ledger, pictures=pictures, language=language)


def guide_in(language: Language, task: Task, name: str, tags: Sequence[str], theme: Theme) -> str:
    """The page of a guide in a language, to stand in that language's folder; `task` is the English one."""
    sheet = Link(text=language.say("To print, in English (PDF)"), href=f"{UP}{name}.pdf")
    document = compose_guide(task_in(language, task), links=(sheet,))
    known = replace(document, blocks=tuple(_without_workings(document, language, name)))
    return _page(known, language, f"{name}.html", tags, theme)


def _without_workings(document: Document, language: Language, name: str) -> Iterator[Block]:
    """The blocks, with the way to the workings in their place: arithmetic is the same in every language."""
    for block in document.blocks:
        if isinstance(block, Part) and block.key == WORKINGS:
            way = f"{UP}{name}.html#{WORKINGS}"
            text = language.say("The arithmetic stands in the [English guide](%(way)s).", way=way)
            yield replace(block, blocks=(Text(text=(text,)),))
        else:
            yield block


def index_in(language: Language, listed: Sequence[Listed], tags: Sequence[str], theme: Theme) -> str:
    """The index over the guides in a language. Statements are in English and stand on the English index."""
    link = language.say("Task guide")
    guides = [
        Listed(
            guide=task_in(language, one.guide),
            links=tuple(replace(way, text=link) for way in one.links[:1]),
            statements=(),
        )
        for one in listed
    ]
    return _page(compose_index(guides), language, "index.html", tags, theme)


def _page(document: Document, language: Language, name: str, tags: Sequence[str], theme: Theme) -> str:
    known = replace(document, editions=editions(name, tags, language), notice=_notice(language))
    return render_page(known, theme, language, assets=ASSETS)


def _notice(language: Language) -> tuple[str, ...]:
    """How the translation stands to the English, in its own language and in English."""
    return tuple(
        one.say(
            "**Translation.** No fluent safety reader has reviewed it. The English text governs: where the "
            "two differ, or where you are in doubt, stop and ask the supervisor. What is not translated "
            "stands in English. Sizes are written with a decimal point, as on the drawings."
        )
        for one in (language, ENGLISH)
    )
