"""What a document is made of: plain frozen blocks, in reading order, with every value already in words.

Two kinds of text stand in them. `str` is plain text. `Prose` is markdown with its values already put in
(`**bold**`, `*italic*`, lists, inner links). Both are escaped where they are laid out, and in both a
number keeps its unit beside it. Words that belong to the page itself ("Hold point", "Released by") are the
theme's and never stand in a block.

A block kind is one dataclass here and one template macro of the same name in snake case. Blocks with a
`title` carry a `key`, which becomes their anchor and must be unique in the document. An empty string or
tuple means that the thing is absent and nothing is printed for it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from typing import Literal, Protocol, TypeAlias

Prose: TypeAlias = str


class Status(StrEnum):
    """Where a revision stands; its word and shape are printed wherever the revision is."""

    DRAFT = "draft"
    FOR_COMMENT = "for-comment"
    FOR_CONSTRUCTION = "for-construction"
    SUPERSEDED = "superseded"
    WITHDRAWN = "withdrawn"


class ControlKind(StrEnum):
    """How strong a control is, strongest first."""

    ELIMINATE = "eliminate"
    SUBSTITUTE = "substitute"
    ENGINEER = "engineer"
    ADMINISTER = "administer"
    PPE = "ppe"


class Picture(Protocol):
    """A finished drawing: SVG text with its size on paper in millimetres and its words for a blind reader."""

    @property
    def name(self) -> str: ...
    @property
    def title(self) -> str: ...
    @property
    def svg(self) -> str: ...
    @property
    def width_mm(self) -> float: ...
    @property
    def height_mm(self) -> float: ...
    @property
    def alt(self) -> str: ...
    @property
    def scale(self) -> str | None: ...
    @property
    def key(self) -> tuple[tuple[str, str], ...]: ...
    @property
    def tag(self) -> str: ...
    def inline(self) -> str:
        """The SVG for a web page, its colours the page's custom properties."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Link:
    """A way to another page of the same publication, relative to the page it stands on."""

    text: str
    href: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Edition:
    """A page in one of the languages it is published in: tag, the language's own name, and the way to it.

    `here` is true for the page it stands on.
    """

    tag: str
    name: str
    href: str
    here: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Fact:
    """A label with what it says."""

    label: str
    text: Prose


@dataclass(frozen=True, slots=True, kw_only=True)
class Person:
    """A named person with role, firm and telephone number."""

    role: str
    name: str
    firm: str = ""
    phone: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """A table column; `width` is a share of the table, 0 for a fair one. `bold` marks sizes to cut by."""

    head: str
    align: Literal["left", "right", "centre"] = "left"
    bold: bool = False
    width: float = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """Rows of plain cells; the first column names its row. Units stand once, in `note`."""

    key: str
    title: str = ""
    intro: Prose = ""
    columns: tuple[Column, ...]
    rows: tuple[tuple[str, ...], ...]
    note: Prose = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Text:
    """Running prose, a paragraph or list to each entry."""

    text: tuple[Prose, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyItem:
    """A part letter of a drawing and what it stands for."""

    letter: str
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """A drawing laid out for paper and, where given, relaid for a telephone; `scale` is said in words.

    `file` and `phone_file` are where each stands as a file of its own, relative to the page; the page then
    fetches the file when the figure comes in sight and does not hold the drawing itself.
    """

    key: str
    number: str = ""
    caption: Prose
    picture: Picture
    phone: Picture | None = None
    scale: str = ""
    items: tuple[KeyItem, ...] = ()
    file: str = ""
    phone_file: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Issue:
    """Revision, status and dates of a document; an empty date means not yet.

    `standing` is the line that says whether this is what was issued.
    """

    revision: str
    status: Status
    issued: str = ""
    review_by: str = ""
    replaces: str = ""
    standing: Prose = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class HoldLine:
    """One hold point as a line of a list: its number, what is seen, and at which step."""

    number: str
    what: Prose
    when: str


@dataclass(frozen=True, slots=True, kw_only=True)
class StopBox:
    """What stops the job: the hold points, the signs to stop at once, and who starts it again."""

    holds: tuple[HoldLine, ...]
    stop_if: tuple[Prose, ...]
    restart: Prose


@dataclass(frozen=True, slots=True, kw_only=True)
class EmergencyColumn:
    """One of the four emergency answers, its heading and its lines."""

    title: str
    lines: tuple[Prose, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Signatory:
    """Who wrote, checked or approved; an empty date means not yet."""

    act: str
    name: str
    role: str
    date: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class DocumentControl:
    """Signatures, what changed since the last revision, and the documents this one rests on."""

    signatories: tuple[Signatory, ...]
    notes: tuple[Prose, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class FrontPage:
    """The first page of a statement, in the order a supervisor asks.

    `title_lines` is the title broken by sense; `client` is what the client must do and will notice.
    """

    title_lines: tuple[str, ...]
    under: tuple[Prose, ...]
    issue: Issue
    what: tuple[Prose, ...]
    where: tuple[Prose, ...]
    places: Table | None = None
    who: tuple[Person, ...]
    client: tuple[Prose, ...] = ()
    stop: StopBox
    emergency: tuple[EmergencyColumn, ...]
    control: DocumentControl


@dataclass(frozen=True, slots=True, kw_only=True)
class TaskSummary:
    """The opening of a task guide: what the task is, what it needs, how it looks when done."""

    stage: str
    title_lines: tuple[str, ...]
    summary: tuple[Prose, ...]
    facts: tuple[Fact, ...] = ()
    figure: Figure | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class LearnerRecord:
    """Lines for a learner to fill in, such as name, unit, date and tutor."""

    key: str
    title: str
    lines: tuple[str, ...]
    note: Prose = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class NotApplicable:
    """Why a required section does not apply and who decided so."""

    reason: Prose
    decided_by: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """A required section: its text, or why it does not apply, or the questions to be asked on site."""

    key: str
    title: str
    text: tuple[Prose, ...] = ()
    rows: tuple[Fact, ...] = ()
    not_applicable: NotApplicable | None = None
    questions: tuple[Prose, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckBox:
    """A box to write a reading in: the opening it is for and the figure expected there."""

    opening: str
    expected: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Check:
    """A measured check: what, the tolerance, how it is taken, and a box for each opening."""

    number: str
    what: Prose
    tolerance: str
    how: Prose
    who: str = ""
    unit: str = ""
    boxes: tuple[CheckBox, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckList:
    """Checks gathered under one heading."""

    key: str
    title: str
    intro: Prose = ""
    checks: tuple[Check, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class HoldPoint:
    """Work waits here for a signature: what waits, who releases, who stands in, the openings to tick.

    `releaser` and `deputy` are printed as name and role; a guide has no names, only roles.
    """

    number: str
    waits: Prose
    releaser: Person
    deputy: Person | None = None
    openings: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Criterion:
    """A criterion that a piece of evidence may serve."""

    code: str
    text: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Evidence:
    """What a learner is asked to keep from a step."""

    ask: Prose
    criteria: tuple[Criterion, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class HazardTouched:
    """A hazard met in a step, by its number in the hazard table."""

    number: int
    name: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One step: warnings before actions, then why, drawing, checks, hold point, and what a learner keeps."""

    number: int
    title: str
    short: str = ""
    who: str = ""
    time: str = ""
    tools: tuple[str, ...] = ()
    hazards: tuple[HazardTouched, ...] = ()
    warnings: tuple[Prose, ...] = ()
    actions: tuple[Prose, ...]
    why: Prose = ""
    figures: tuple[Figure, ...] = ()
    checks: tuple[Check, ...] = ()
    hold: HoldPoint | None = None
    evidence: Evidence | None = None
    mistakes: tuple[Prose, ...] = ()
    question: Prose = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sequence:
    """The steps in order, numbered from 1."""

    key: str
    title: str
    intro: Prose = ""
    steps: tuple[Step, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Control:
    """One control: its kind, what it is, and who sees to it."""

    kind: ControlKind
    text: Prose
    who: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Hazard:
    """A hazard, whom it harms, its controls strongest first, and what remains with the reason."""

    number: int
    name: str
    harms: Prose
    steps: tuple[int, ...] = ()
    controls: tuple[Control, ...]
    remains: str
    reason: Prose = ""
    rating: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class HazardTable:
    """The hazards of the job with their controls."""

    key: str
    title: str
    intro: Prose = ""
    hazards: tuple[Hazard, ...]
    note: Prose = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Origin:
    """A value that a working uses and the file and line it comes from."""

    name: str
    value: str
    place: str


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkingCase:
    """The arithmetic in numbers at the openings of `scope`, line by line, with the values of these alone."""

    scope: str = ""
    lines: tuple[str, ...]
    result: str
    origins: tuple[Origin, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Working:
    """How one quantity was worked out: in names once, then in numbers; `origins` hold in every case."""

    label: str
    formula: str
    cases: tuple[WorkingCase, ...]
    origins: tuple[Origin, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Workings:
    """The annex of workings."""

    key: str
    title: str
    intro: Prose = ""
    workings: tuple[Working, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Policy:
    """A number chosen by policy, its value, why, and where it is set."""

    label: str
    value: str
    reason: Prose = ""
    place: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class PolicyNote:
    """The numbers in the document that are policy and neither measured nor worked out."""

    key: str
    title: str
    intro: Prose = ""
    policies: tuple[Policy, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Way:
    """One way of doing the work: its cost, what it leaves, and why it is refused where it is."""

    name: str
    chosen: bool = False
    costs: tuple[Prose, ...] = ()
    leaves: tuple[Prose, ...] = ()
    refused: tuple[Prose, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Comparison:
    """Ways of doing the work set side by side; `scope` says for which openings."""

    key: str
    title: str
    intro: Prose = ""
    ways: tuple[Way, ...]
    note: Prose = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """A piece to cut; sizes are numbers as printed, their unit stands in the list's note."""

    mark: str
    piece: str
    opening: str = ""
    count: str = "1"
    hand: str = ""
    long_point: str
    short_point: str = ""
    ends: str = ""
    section: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceList:
    """The cutting list, a box to tick against each piece."""

    key: str
    title: str
    intro: Prose = ""
    pieces: tuple[Piece, ...]
    note: Prose = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """A question with its answer, the step it belongs to (0 for none) and the criteria it may serve."""

    question: Prose
    answer: Prose
    step: int = 0
    criteria: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class AnswerKey:
    """Questions with their answers, for a tutor alone."""

    key: str
    title: str
    answers: tuple[Answer, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """What a tutor looks for in the evidence of a step, and what counts against it."""

    step: int
    title: str
    ask: Prose
    criteria: tuple[str, ...] = ()
    points: tuple[Prose, ...] = ()
    mistakes: tuple[Prose, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class MarkingPoints:
    """The marking points of every step that asks for evidence, for a tutor alone."""

    key: str
    title: str
    intro: Prose = ""
    marks: tuple[Mark, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CardColumn:
    """An opening on a bench card: its mark and its name."""

    mark: str
    name: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class CardRow:
    """A size to cut or set by: what it is, how it is meant, and a number in mm for each column."""

    label: Prose
    note: Prose = ""
    sizes: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CardCheck:
    """A check at the bench with its limit."""

    what: Prose
    limit: str


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchCard:
    """One side of A4, in black alone, to be read at arm's length.

    `under` stands over the title. `order` are the steps done at the bench, a hold point after the step that
    it ends. `releaser` is who signs, with a telephone number. `figure` is left out where the rest needs its
    room; where that is not enough, checks are set `close`, one after another in a paragraph.
    """

    key: str
    under: str
    title: str
    revision: str
    columns: tuple[CardColumn, ...]
    rows: tuple[CardRow, ...]
    figure: Figure | None = None
    checks: tuple[CardCheck, ...] = ()
    order: tuple[Prose, ...] = ()
    holds: tuple[HoldLine, ...] = ()
    releaser: str
    stop_if: tuple[Prose, ...] = ()
    emergency: tuple[Fact, ...] = ()
    close: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Cautions:
    """The usual cautions and the deference to local law, site rules and competent persons."""

    key: str
    title: str
    lines: tuple[Prose, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class StopList:
    """What stops the work at once, for a learner, who has no first page to read it on."""

    key: str
    title: str
    lines: tuple[Prose, ...]
    restart: Prose = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """A question to think through, with the step it belongs to (0 for none)."""

    text: Prose
    step: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class QuestionList:
    """Questions with `space` ruled lines to answer each on paper; no answers stand here."""

    key: str
    title: str
    intro: Prose = ""
    questions: tuple[Question, ...]
    space: int = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Term:
    """A word of the trade and its meaning."""

    word: str
    meaning: Prose


@dataclass(frozen=True, slots=True, kw_only=True)
class Glossary:
    """Words of the trade explained."""

    key: str
    title: str
    terms: tuple[Term, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasurementTable:
    """A blank table to fill in on site; a row and a column for each name, unit in `note`."""

    key: str
    title: str
    intro: Prose = ""
    row_head: str
    columns: tuple[str, ...]
    rows: tuple[str, ...]
    note: Prose = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class SignOff:
    """Names to be signed at the end of the work."""

    key: str
    title: str
    intro: Prose = ""
    signatories: tuple[Signatory, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class BriefingRecord:
    """Blank lines for everyone briefed on this revision."""

    key: str
    title: str
    intro: Prose = ""
    rows: int = 10


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeRecord:
    """A blank form for a change while the work goes on, a line to each thing that is to be written down."""

    key: str
    title: str
    intro: Prose = ""
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Contents:
    """The list of contents, gathered from the document's own headings when it is laid out."""

    key: str = "contents"


@dataclass(frozen=True, slots=True, kw_only=True)
class JobEntry:
    """A job of a method on the index: its name, issue and the ways to its statement."""

    title: str
    issue: Issue
    links: tuple[Link, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """What has changed in a document and when; `title` and `href` say in which, empty for this one."""

    day: str
    text: Prose
    title: str = ""
    href: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeLog:
    """Changes, the newest first."""

    key: str
    title: str
    intro: Prose = ""
    changes: tuple[Change, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Use:
    """A method that a tool or a hazard is met in: its number, the way to it, and at which steps."""

    number: str
    href: str
    steps: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Used:
    """A tool or a hazard with the methods it is met in."""

    key: str
    name: str
    uses: tuple[Use, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class UseList:
    """All tools, or all hazards, of the methods of an index, in the order of their names."""

    key: str
    title: str
    intro: Prose = ""
    used: tuple[Used, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class MethodEntry:
    """A method on the index: number, title, short facts, a small drawing, and the ways to it.

    `met` are the keys under which its tools and hazards stand in the lists of the same page.
    """

    number: str
    title: str
    summary: Prose = ""
    facts: tuple[str, ...] = ()
    picture: Picture | None = None
    links: tuple[Link, ...]
    jobs: tuple[JobEntry, ...] = ()
    met: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Stage:
    """A stage of the job with its methods in the order of the work."""

    key: str
    title: str
    methods: tuple[MethodEntry, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class MethodList:
    """All methods, grouped by stage of the job."""

    stages: tuple[Stage, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """A heading over several blocks; `new_page` starts it on a fresh sheet of paper."""

    key: str
    title: str
    intro: Prose = ""
    blocks: tuple[Block, ...]
    new_page: bool = False


Block: TypeAlias = (
    FrontPage
    | TaskSummary
    | Contents
    | Part
    | Text
    | Section
    | Sequence
    | Figure
    | Table
    | HazardTable
    | CheckList
    | Workings
    | PolicyNote
    | Comparison
    | PieceList
    | Cautions
    | StopList
    | QuestionList
    | Glossary
    | MeasurementTable
    | LearnerRecord
    | SignOff
    | BriefingRecord
    | ChangeRecord
    | MethodList
    | ChangeLog
    | UseList
    | BenchCard
    | AnswerKey
    | MarkingPoints
)

Kind: TypeAlias = Literal["statement", "guide", "index", "card", "full-size", "tutor", "superseded"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Document:
    """A document ready to be laid out.

    `issue` is None for a guide or an index. `footer` is printed at the foot of every sheet after the
    company's name, its parts set apart by points. `links` lead to other pages of the publication. `address`
    is where the page will stand once published, for the code that leads back to it from paper. `files` lead
    to what may be taken from the page: lists, and all of it in one. `logo` is an address that holds the
    firm's logo whole; empty where it is not to be shown. `editions` are the languages of the page, the one
    that governs first; none where it is published in that alone. `notice` says of a translation how it stands
    to the text that governs: in its own language, then in the governing one.
    """

    kind: Kind
    lang: str
    number: str = ""
    title: str
    description: str = ""
    job: str = ""
    company: str
    issue: Issue | None = None
    footer: tuple[str, ...] = ()
    home: Link | None = None
    links: tuple[Link, ...] = ()
    files: tuple[Link, ...] = ()
    address: str = ""
    logo: str = ""
    editions: tuple[Edition, ...] = ()
    notice: tuple[Prose, ...] = ()
    blocks: tuple[Block, ...]

    def steps(self) -> tuple[Step, ...]:
        """Every step of the document in order."""
        sequences = (block for block in every_block(self.blocks) if isinstance(block, Sequence))
        return tuple(step for sequence in sequences for step in sequence.steps)

    def figures(self) -> tuple[Figure, ...]:
        """Every figure of the document: those of the steps, then those that stand by themselves."""
        alone = (block for block in every_block(self.blocks) if isinstance(block, Figure))
        return (*(figure for step in self.steps() for figure in step.figures), *alone)


def every_block(blocks: tuple[Block, ...]) -> Iterator[Block]:
    """Each block, and after a part the blocks inside it, in reading order."""
    for block in blocks:
        yield block
        if isinstance(block, Part):
            yield from every_block(block.blocks)
