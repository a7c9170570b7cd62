"""A pair drawn, composed and laid out: the page for the screen and the sheet that is to be printed."""

from __future__ import annotations

import base64
import json
from collections.abc import Callable, Iterable, Mapping
from dataclasses import asdict, dataclass, field, replace
from functools import lru_cache

from generator.documents.bench_card import card_orders, compose_cards
from generator.documents.blocks import Document, Link
from generator.documents.content import content_hash
from generator.documents.cutting import plan_orders
from generator.documents.exposures import dose_orders
from generator.documents.figures import orders_of, small_order
from generator.documents.full_size import compose_full_size, full_size_orders
from generator.documents.guide import compose_guide
from generator.documents.index import Listed, compose_index
from generator.documents.listings import listings
from generator.documents.programme import programme_orders
from generator.documents.statement import compose_statement
from generator.documents.task import Task
from generator.documents.tutor import compose_library, compose_tutor
from generator.drawings.orders import Order
from generator.drawings.registry import draw
from generator.drawings.svg import Picture
from generator.model.folder import METHODS
from generator.pipeline.pairs import Pair
from generator.pipeline.standing import ways_to_issues, with_standing
from generator.problems import ProblemLog
from generator.quantities.cutting.plans import cutting_plans
from generator.quantities.work import work_out
from generator.rendering.html import render_page, render_sheet
from generator.rendering.labels import language_of
from generator.rendering.logos import logo_address
from generator.rendering.pictures import drawing_files
from generator.rendering.spreadsheets import csv_bytes, xlsx_bytes
from generator.rendering.themes import Theme

LIBRARY = "index"


@dataclass(frozen=True, slots=True, kw_only=True)
class Composition:
    """The HTML of a document, for the screen and for the printer, and the drawings that stand as files.

    `card` is the bench card's sheet, `full_size` that of the drawings at 1:1, `carried` the page as it is
    sent away from the site, `lists` what spreadsheets take, `content` the hash of what a statement says; each
    is empty where there is none.
    """

    page: str
    sheet: str
    card: str = ""
    full_size: str = ""
    carried: str = ""
    content: str = ""
    drawings: Mapping[str, str] = field(default_factory=dict)
    lists: Mapping[str, bytes] = field(default_factory=dict)


def compose(pair: Pair) -> bytes:
    """The pair's composition as bytes; the pair must be free of faults."""
    task = _task(pair)
    composed = (
        compose_statement(task, links=_links(pair)) if pair.job else compose_guide(task, links=_links(pair))
    )
    document = _standing(replace(composed, address=_address(pair), logo=_logo(pair)), pair)
    made = _laid_out(document, pair.theme)
    return _kept(_with_job(made, task, document, pair) if pair.job else made)


def _standing(document: Document, pair: Pair) -> Document:
    control = pair.job.document if pair.job else None
    if control is None:
        return document
    return with_standing(document, control, content_hash(document), pair.issued, language_of(pair.theme))


def _with_job(made: Composition, task: Task, document: Document, pair: Pair) -> Composition:
    """The composition with what only a job has: bench card, lists, and the page that is sent."""
    found = listings(task)
    lists = {f"{pair.stem}-{listing.name}.csv": csv_bytes(listing) for listing in found}
    if found:
        properties = {"title": f"{document.number} {document.job}", "company": document.company}
        lists |= {f"{pair.stem}-lists.xlsx": xlsx_bytes(found, properties)}
    say = language_of(pair.theme).say
    drawn = compose_full_size(task)
    full_size = render_sheet(drawn, pair.theme) if drawn else ""
    named = (*((pair.full_size,) if drawn else ()), *lists)
    ways = tuple(Link(text=_kind_of_file(name, say), href=name) for name in named)
    parcel = Link(text=say("All files of this job (ZIP)"), href=pair.parcel)
    issues = ways_to_issues(pair.issued, language_of(pair.theme))
    page = render_page(replace(document, files=(*ways, parcel, *issues)), pair.theme)
    carried = render_page(replace(document, files=ways, home=None), pair.theme)
    card = render_sheet(compose_cards(task), pair.theme) if pair.card else ""
    content = content_hash(document)
    return replace(
        made, page=page, card=card, full_size=full_size, carried=carried, lists=lists, content=content
    )


def _kind_of_file(name: str, say: Callable[[str], str]) -> str:
    words = {
        "full-size.pdf": say("Full-size drawings (PDF)"),
        "cutting-list.csv": say("Cutting list (CSV)"),
        "materials.csv": say("Materials (CSV)"),
        "lists.xlsx": say("Cutting list and materials (XLSX)"),
    }
    return next(text for end, text in words.items() if name.endswith(end))


def _kept(made: Composition) -> bytes:
    lists = {name: base64.b64encode(content).decode() for name, content in made.lists.items()}
    return json.dumps({**asdict(made), "lists": lists}).encode()


def compose_pack(guide: Pair) -> bytes:
    """The tutor pack of a guide's method, as a composition."""
    document = compose_tutor(_worked(guide), links=_pack_links(guide.pack, guide.theme))
    return _pack(document, guide.theme)


def compose_pack_of_all(guides: tuple[Pair, ...]) -> bytes:
    """The criteria of all methods, with the ways to each method's pack, as a composition."""
    ways = tuple(Link(text=guide.method.method.value, href=f"{guide.pack}.html") for guide in guides)
    document = compose_library(
        [_worked(guide) for guide in guides], links=(*_pack_links(LIBRARY, guides[0].theme), *ways)
    )
    return _pack(document, guides[0].theme)


def _pack(document: Document, theme: Theme) -> bytes:
    return _kept(_laid_out(document, theme))


def _pack_links(name: str, theme: Theme) -> tuple[Link, ...]:
    say = language_of(theme).say
    over = () if name == LIBRARY else (Link(text=say("All methods"), href=f"{LIBRARY}.html"),)
    return (Link(text=say("To print (PDF)"), href=f"{name}.pdf"), *over)


def _worked(guide: Pair) -> Task:
    ledger = work_out(guide.method, None, guide.project, ProblemLog())
    return Task(project=guide.project, ledger=ledger, pictures={}, language=language_of(guide.theme))


def _logo(pair: Pair) -> str:
    """The firm's logo on what it answers for; a learner's guide bears none."""
    folder = pair.project.folder / METHODS
    return logo_address(pair.project.house.company, folder) if pair.job else ""


def _address(pair: Pair) -> str:
    """Where the page will stand once the site is on the web; empty where the house does not say."""
    company = pair.project.house.company
    if company is None or company.site is None:
        return ""
    return f"{company.site.value.rstrip('/')}/{pair.name}.html"


def composition(made: bytes) -> Composition:
    """The composition again."""
    told = json.loads(made)
    lists = {name: base64.b64decode(content) for name, content in told["lists"].items()}
    return Composition(**{**told, "lists": lists})


def compose_page_of_all(pairs: tuple[Pair, ...]) -> bytes:
    """The index page over all guides and the statements that apply them."""
    guides = [pair for pair in pairs if pair.job is None]
    document = compose_index([_listed(guide, pairs) for guide in guides])
    return render_page(document, pairs[0].theme).encode()


def _laid_out(document: Document, theme: Theme) -> Composition:
    return Composition(
        page=render_page(document, theme),
        sheet=render_sheet(document, theme),
        drawings=drawing_files(document.figures()),
    )


def _task(pair: Pair) -> Task:
    """The pair worked out, with every drawing of it for paper and for the phone."""
    ledger = work_out(pair.method, pair.job, pair.project, ProblemLog())
    plans = cutting_plans(ledger, pair.project, ProblemLog())
    carded = card_orders(ledger) if pair.card else ()
    timed = programme_orders(ledger) if pair.job else ()
    at_full_size = full_size_orders(ledger) if pair.job else ()
    dosed = dose_orders(ledger, pair.project.catalogue.tools) if pair.job else ()
    pictures = _drawn((*orders_of(ledger), *plan_orders(plans), *carded, *timed, *dosed, *at_full_size))
    language = language_of(pair.theme)
    return Task(project=pair.project, ledger=ledger, plans=plans, pictures=pictures, language=language)


def _drawn(orders: Iterable[Order]) -> Mapping[Order, Picture]:
    return {order: _drawing(order) for order in dict.fromkeys(orders)}


# A long-lived process composes the same drawings at every save of a sentence.
@lru_cache(maxsize=512)
def _drawing(order: Order) -> Picture:
    return draw(order.name, dict(order.values), order.width)


def _links(pair: Pair) -> tuple[Link, ...]:
    say = language_of(pair.theme).say
    card = (Link(text=say("Bench card (PDF)"), href=pair.card),) if pair.card else ()
    return (Link(text=say("To print (PDF)"), href=f"{pair.name}.pdf"), *card)


def _listed(guide: Pair, pairs: tuple[Pair, ...]) -> Listed:
    ledger = work_out(guide.method, None, guide.project, ProblemLog())
    small = small_order(ledger)
    pictures = _drawn((small,) if small else ())
    task = Task(project=guide.project, ledger=ledger, pictures=pictures, language=language_of(guide.theme))
    # Nothing that the index says of a statement is worked out, so that its job's sizes are left alone.
    statements = tuple(
        (replace(task, ledger=replace(ledger, job=pair.job)), _ways(pair))
        for pair in pairs
        if pair.job and pair.method.method == guide.method.method
    )
    return Listed(guide=task, links=_ways(guide), statements=statements)


def _ways(pair: Pair) -> tuple[Link, ...]:
    say = language_of(pair.theme).say
    kind = say("Method statement") if pair.job else say("Task guide")
    return (Link(text=kind, href=f"{pair.name}.html"), *_links(pair))
