"""A pair drawn, composed and laid out: the page for the screen and the sheet that is to be printed."""

from __future__ import annotations

import base64
import json
from collections.abc import Callable, Iterable, Mapping
from dataclasses import asdict, dataclass, field, replace

from generator.documents.bench_card import card_orders, compose_cards
from generator.documents.blocks import Document, Link
from generator.documents.content import content_hash
from generator.documents.cutting import plan_orders
from generator.documents.exposures import dose_orders
from generator.documents.figures import orders_of, small_order
from generator.documents.full_size import compose_full_size, full_size_orders
from generator.documents.guide import compose_guide
from generator.documents.index import Listed, compose_index
from generator.documents.listings import Listing, listings
from generator.documents.programme import programme_orders
from generator.documents.statement import compose_statement
from generator.documents.task import Task
from generator.documents.tutor import compose_library, compose_tutor
from generator.drawings.orders import Order
from generator.drawings.svg import Picture
from generator.model.folder import METHODS
from generator.pipeline.editions import drawing, editions, guide_in, index_in
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
from generator.wording import Language
from generator.wording.languages import language

LIBRARY, INDEX = "index", "index.html"


@dataclass(frozen=True, slots=True, kw_only=True)
class Composition:
    """The HTML of a document, for the screen and for the printer, and the drawings that stand as files.

    `card` is the bench card's sheet, `full_size` that of the drawings at 1:1, `carried` the page as it is
    sent away from the site, `lists` what spreadsheets take, `content` the hash of what a statement says,
    `abroad` a guide's page by the tag of each further language; each is empty where there is none.
    """

    page: str
    sheet: str
    card: str = ""
    full_size: str = ""
    carried: str = ""
    content: str = ""
    drawings: Mapping[str, str] = field(default_factory=dict)
    lists: Mapping[str, bytes] = field(default_factory=dict)
    abroad: Mapping[str, str] = field(default_factory=dict)


def compose(pair: Pair) -> bytes:
    """The pair's composition as bytes; the pair must be free of faults."""
    task = _task(pair, carded=True)
    document = _document(task, pair)
    if pair.job is None:
        made = _laid_out(document, document, pair.theme)
        return _kept(replace(made, abroad={tag: _abroad(task, pair, tag) for tag in pair.tags}))
    full_size, found = compose_full_size(task), listings(task)
    ways = _ways_beside(full_size, found, pair)
    made = _laid_out(_on_the_site(document, ways, pair), document, pair.theme)
    return _kept(
        replace(
            made,
            card=render_sheet(compose_cards(task), pair.theme) if pair.card else "",
            full_size=render_sheet(full_size, pair.theme) if full_size else "",
            carried=render_page(replace(document, files=ways, home=None), pair.theme),
            lists=_lists(found, document, pair),
            content=content_hash(document),
        )
    )


def compose_page(pair: Pair) -> bytes:
    """The page of the pair's composition alone, for whoever looks at the screen and at nothing else."""
    task = _task(pair, carded=False)
    document = _document(task, pair)
    if pair.job:
        ways = _ways_beside(compose_full_size(task), listings(task), pair)
        document = _on_the_site(document, ways, pair)
    return render_page(document, pair.theme).encode()


def compose_page_in(page: tuple[Pair, str]) -> bytes:
    """The page of a guide's pair alone, in the further language of the tag."""
    pair, tag = page
    return _abroad(_task(pair, carded=False), pair, tag).encode()


def _abroad(task: Task, pair: Pair, tag: str) -> str:
    """A guide's page in a further language, from the same drawings."""
    return guide_in(language(tag), task, pair.name, pair.tags, pair.theme)


def _document(task: Task, pair: Pair) -> Document:
    composed = (
        compose_statement(task, links=_links(pair)) if pair.job else compose_guide(task, links=_links(pair))
    )
    document = replace(
        composed,
        address=_address(pair),
        logo=_logo(pair),
        editions=editions(f"{pair.name}.html", pair.tags),
    )
    control = pair.job.document if pair.job else None
    if control is None:
        return document
    content = content_hash(document) if pair.issued else ""
    return with_standing(document, control, content, pair.issued, language_of(pair.theme))


def _on_the_site(document: Document, ways: tuple[Link, ...], pair: Pair) -> Document:
    """A statement with the ways to the other files of its job, which only the site has beside it."""
    language = language_of(pair.theme)
    parcel = Link(text=language.say("All files of this job (ZIP)"), href=pair.parcel)
    return replace(document, files=(*ways, parcel, *ways_to_issues(pair.issued, language)))


def _lists(found: tuple[Listing, ...], document: Document, pair: Pair) -> Mapping[str, bytes]:
    """The files that spreadsheets take, by their names."""
    if not found:
        return {}
    properties = {"title": f"{document.number} {document.job}", "company": document.company}
    *texts, book = _list_names(found, pair)
    plain = {name: csv_bytes(listing) for name, listing in zip(texts, found, strict=True)}
    return plain | {book: xlsx_bytes(found, properties)}


def _list_names(found: tuple[Listing, ...], pair: Pair) -> tuple[str, ...]:
    """A file for each listing, and last the one that holds them all; none where there is no listing."""
    texts = tuple(f"{pair.stem}-{listing.name}.csv" for listing in found)
    return (*texts, f"{pair.stem}-lists.xlsx") if found else ()


def _ways_beside(full_size: Document | None, found: tuple[Listing, ...], pair: Pair) -> tuple[Link, ...]:
    """The ways to the files of a job that may be sent with its page."""
    say = language_of(pair.theme).say
    names = (*((pair.full_size,) if full_size else ()), *_list_names(found, pair))
    return tuple(Link(text=_kind_of_file(name, say), href=name) for name in names)


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
    return _kept(_laid_out(document, document, theme))


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
    """The index pages over all guides, the English one with the jobs that apply them; see `index_pages`."""
    guides = [pair for pair in pairs if pair.job is None]
    listed, theme, tags = [_listed(guide, pairs) for guide in guides], pairs[0].theme, guides[0].tags
    document = replace(compose_index(listed), editions=editions(INDEX, tags))
    abroad = {f"{tag}/{INDEX}": index_in(language(tag), listed, tags, theme) for tag in tags}
    return json.dumps({INDEX: render_page(document, theme), **abroad}).encode()


def index_pages(made: bytes) -> Mapping[str, bytes]:
    """The index pages by their places in the site."""
    return {name: page.encode() for name, page in json.loads(made).items()}


def _laid_out(page: Document, sheet: Document, theme: Theme) -> Composition:
    """A document as it stands on the site, and as it is printed."""
    return Composition(
        page=render_page(page, theme),
        sheet=render_sheet(sheet, theme),
        drawings=drawing_files(sheet.figures()),
    )


def _task(pair: Pair, *, carded: bool) -> Task:
    """The pair worked out, with every drawing of it for paper and phone, and for its bench card if asked."""
    ledger = work_out(pair.method, pair.job, pair.project, ProblemLog())
    plans = cutting_plans(ledger, pair.project, ProblemLog())
    cards = card_orders(ledger) if carded and pair.card else ()
    timed = programme_orders(ledger) if pair.job else ()
    at_full_size = full_size_orders(ledger) if pair.job else ()
    dosed = dose_orders(ledger, pair.project.catalogue.tools) if pair.job else ()
    spoken, orders = language_of(pair.theme), (*orders_of(ledger), *plan_orders(plans))
    pictures = _drawn((*orders, *cards, *timed, *dosed, *at_full_size), spoken)
    return Task(project=pair.project, ledger=ledger, plans=plans, pictures=pictures, language=spoken)


def _drawn(orders: Iterable[Order], spoken: Language) -> Mapping[Order, Picture]:
    return {order: drawing(order, spoken) for order in dict.fromkeys(orders)}


def _links(pair: Pair) -> tuple[Link, ...]:
    say = language_of(pair.theme).say
    card = (Link(text=say("Bench card (PDF)"), href=pair.card),) if pair.card else ()
    return (Link(text=say("To print (PDF)"), href=f"{pair.name}.pdf"), *card)


def _listed(guide: Pair, pairs: tuple[Pair, ...]) -> Listed:
    ledger = work_out(guide.method, None, guide.project, ProblemLog())
    small = small_order(ledger)
    pictures = _drawn((small,) if small else (), language_of(guide.theme))
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
