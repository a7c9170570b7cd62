"""A statement, a guide and an index of the Reading Room, with sizes that agree, to lay out in tests."""

# ruff: noqa: E501

from __future__ import annotations

from dataclasses import dataclass, replace

from generator.documents.blocks import (
    Answer,
    AnswerKey,
    BenchCard,
    BriefingRecord,
    CardCheck,
    CardColumn,
    CardRow,
    Cautions,
    Change,
    ChangeLog,
    ChangeRecord,
    Check,
    CheckBox,
    CheckList,
    Column,
    Comparison,
    Contents,
    Control,
    ControlKind,
    Criterion,
    Document,
    DocumentControl,
    EmergencyColumn,
    Evidence,
    Fact,
    Figure,
    FrontPage,
    Glossary,
    Hazard,
    HazardTable,
    HazardTouched,
    HoldLine,
    HoldPoint,
    Issue,
    JobEntry,
    KeyItem,
    LearnerRecord,
    Link,
    Mark,
    MarkingPoints,
    MeasurementTable,
    MethodEntry,
    MethodList,
    NotApplicable,
    Origin,
    Part,
    Person,
    Piece,
    PieceList,
    Policy,
    PolicyNote,
    Question,
    QuestionList,
    Section,
    Sequence,
    Signatory,
    SignOff,
    Stage,
    Status,
    Step,
    StopBox,
    StopList,
    Table,
    TaskSummary,
    Term,
    Text,
    Use,
    Used,
    UseList,
    Way,
    Working,
    WorkingCase,
    Workings,
)
from generator.wording import ENGLISH

FIRST_QUIRK, SECOND_QUIRK, ARCHITRAVE, PACKER_WIDTH = 5, 4, 69, 22
MARGIN = FIRST_QUIRK + SECOND_QUIRK


@dataclass(frozen=True, slots=True, kw_only=True)
class Opening:
    """One surveyed opening and what follows from it, in millimetres."""

    number: str
    name: str
    width: int
    height: int
    mean: str
    packer: str

    @property
    def head(self) -> int:
        """Architrave head between long points."""
        return self.width + 2 * (MARGIN + ARCHITRAVE)

    @property
    def leg(self) -> int:
        """Architrave leg to the long point."""
        return self.height + MARGIN + ARCHITRAVE


OPENINGS = (
    Opening(number="1", name="Porch to hall", width=768, height=1990, mean="8.2", packer="8.5"),
    Opening(number="2", name="Hall to reading room", width=844, height=1990, mean="8.7", packer="9.0"),
    Opening(number="3", name="Hall to office", width=768, height=1992, mean="7.4", packer="7.5"),
    Opening(number="4", name="Hall to kitchen", width=692, height=1989, mean="7.9", packer="8.0"),
)
NAMES = tuple(opening.number for opening in OPENINGS)


@dataclass(frozen=True, slots=True, kw_only=True)
class SamplePicture:
    """A section drawn from plain shapes, enough to be scaled, coloured and read aloud."""

    name: str
    title: str
    svg: str
    width_mm: float
    height_mm: float
    alt: str
    scale: str | None = "1:1"
    key: tuple[tuple[str, str], ...] = ()
    tag: str = ENGLISH.tag

    def inline(self) -> str:
        """The SVG with its two colours as properties of the page."""
        named = self.svg.replace("#1c1c1c", "var(--drawing-ink,#1c1c1c)")
        return named.replace("#f0eadd", "var(--drawing-tint,#f0eadd)")


def section_picture(width: float = 175) -> SamplePicture:
    """A section through the jamb, `width` mm across."""
    part = 'stroke="#1c1c1c" stroke-width="0.5"'
    svg = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}mm" height="70mm" viewBox="0 0 {width} 70">'
        f'<defs><clipPath id="edge"><rect width="{width}" height="70"/></clipPath></defs>'
        f'<g clip-path="url(#edge)"><rect x="4" y="10" width="69" height="18" fill="#f0eadd" {part}/>'
        f'<rect x="51" y="28" width="22" height="8.5" fill="#f0eadd" {part}/>'
        f'<rect x="46" y="36.5" width="32" height="30" fill="none" {part}/>'
        '<text x="38" y="20" font-size="4.8" font-weight="700" fill="#1c1c1c" font-family="Fira Sans">A</text>'
        '<text x="60" y="34" font-size="4.8" font-weight="700" fill="#1c1c1c" font-family="Fira Sans">B</text>'
        '<text x="60" y="52" font-size="4.8" font-weight="700" fill="#1c1c1c" font-family="Fira Sans">C</text>'
        "</g></svg>"
    )
    return SamplePicture(
        name="jamb_section",
        title="Section through the left jamb",
        svg=svg,
        width_mm=width,
        height_mm=70,
        alt="Plan section through the left jamb: architrave 69 by 18 mm on a packer 22 by 8.5 mm on the frame.",
    )


def jamb_figure(key: str, number: str) -> Figure:
    """The jamb section as a figure in both widths."""
    return Figure(
        key=key,
        number=number,
        caption="Plan section, left jamb of opening 1. Sizes in mm from the frame's inner edge.",
        picture=section_picture(),
        phone=section_picture(80),
        scale="Full size (1:1).",
        items=(
            KeyItem(letter="A", text="architrave, MDF, 69 × 18"),
            KeyItem(letter="B", text="packer, softwood, 22 × 8.5"),
            KeyItem(letter="C", text="frame, existing, edge 32"),
        ),
    )


def narrow_figure(key: str, number: str) -> Figure:
    """A drawing that fits the steps' column, its key at the side."""
    return replace(jamb_figure(key, number), picture=section_picture(110))


INES = Person(role="site supervisor", name="Ines Carrow", firm="Pellow & Finch", phone="07700 900417")
JOAN = Person(role="director", name="Joan Finch", firm="Pellow & Finch", phone="07700 900422")
HOLDS = {
    "H1": HoldPoint(
        number="H1",
        waits="The set-back readings are agreed. Step 4 waits.",
        releaser=INES,
        deputy=JOAN,
        openings=NAMES,
    ),
    "H2": HoldPoint(
        number="H2",
        waits="Packers are seen before they are covered. Step 6 waits.",
        releaser=INES,
        deputy=JOAN,
        openings=NAMES,
    ),
    "H3": HoldPoint(
        number="H3", waits="The finished work is accepted. Handing over waits.", releaser=INES, deputy=JOAN
    ),
}
HAZARDS = (
    Hazard(
        number=1,
        name="Blade of the chop saw",
        harms="Person sawing",
        steps=(4, 6, 7),
        controls=(
            Control(
                kind=ControlKind.ELIMINATE, text="Architrave heads bought docked and primed.", who="Abery"
            ),
            Control(
                kind=ControlKind.ENGINEER, text="Self-closing guard tried before the first cut.", who="Abery"
            ),
            Control(
                kind=ControlKind.ADMINISTER,
                text="Hands 150 mm clear of the blade; wait for it to stop before the offcut is lifted.",
                who="Both",
            ),
        ),
        remains="Low",
        reason="Few cuts, long stock held on both sides.",
    ),
    Hazard(
        number=2,
        name="Pin through the face or into a hand",
        harms="Person pinning, second pair of hands",
        steps=(5, 8),
        controls=(
            Control(kind=ControlKind.SUBSTITUTE, text="Adhesive, not pins, along the outer edge.", who="All"),
            Control(kind=ControlKind.ENGINEER, text="Sequential trigger; pins 38 mm at most.", who="Abery"),
            Control(kind=ControlKind.ADMINISTER, text="Holding hand 150 mm clear of the muzzle.", who="All"),
            Control(
                kind=ControlKind.PPE, text="Eye protection of the class the site rules ask for.", who="Both"
            ),
        ),
        remains="Low",
        reason="Short pins, clear hand distance.",
    ),
    Hazard(
        number=3,
        name="MDF dust",
        harms="Person sawing, others in the hall",
        steps=(4, 6, 7),
        controls=(
            Control(
                kind=ControlKind.ENGINEER, text="M-class extraction on before the first cut.", who="Abery"
            ),
            Control(
                kind=ControlKind.ADMINISTER, text="Saw in the yard tent; vacuum, never sweep.", who="Both"
            ),
            Control(kind=ControlKind.PPE, text="FFP3, face-fit tested, at the saw.", who="Both"),
        ),
        remains="Low",
        reason="About 12 min of sawing a day.",
    ),
    Hazard(
        number=5,
        name="Hidden cable",
        harms="Person pinning",
        steps=(5, 8),
        controls=(
            Control(
                kind=ControlKind.ELIMINATE,
                text="Pins to packer and frame only, never into plaster.",
                who="Both",
            ),
            Control(
                kind=ControlKind.ADMINISTER, text="Detector proved, then run up both legs.", who="Hallam"
            ),
        ),
        remains="Very low",
        reason="No pin enters the wall.",
    ),
)
TOUCHED = {hazard.number: HazardTouched(number=hazard.number, name=hazard.name) for hazard in HAZARDS}


def reading_check(number: str, openings: bool) -> Check:
    """The packer's check, a box for each opening in a statement."""
    boxes = tuple(CheckBox(opening=f"Opening {n}" if n == "1" else n, expected="+0.5") for n in NAMES)
    return Check(
        number=number,
        what="Packer to plaster.",
        tolerance="−0.5 / +1.0 mm",
        how="Straightedge off the plaster every 400 mm. Worst reading, in mm.",
        unit="mm",
        boxes=boxes if openings else (),
    )


def steps(*, guide: bool) -> tuple[Step, ...]:
    """Nine steps; a guide's ask for evidence and think, a statement's name who."""
    titles = (
        ("Read the drawing and the survey", "Read the drawing"),
        ("Protect floor and door", "Protect floor and door"),
        ("Take the set-back readings", "Take set-back readings"),
        ("Gauge and rip the packers", "Gauge and rip packers"),
        ("Glue and pin the packers to the frame's edge", "Glue and pin packers"),
        ("Cut the head, then dry-fit it on the second quirk", "Cut and fit the head"),
        ("Cut the legs from the fitted head", "Cut and fit the legs"),
        ("Glue, fix, punch and fill", "Fix, punch and fill"),
        ("Check and hand over", "Check and hand over"),
    )
    made = [
        Step(
            number=number,
            title=title,
            short=short,
            who="" if guide else "Abery, Hallam",
            time="15 min an opening",
            tools=("steel rule", "combination square", "straightedge"),
            actions=(
                f"Set the square to {FIRST_QUIRK} mm and mark every 300 mm, legs first, then the head.",
                "Keep the offcut until the opening is signed for.",
            ),
            why="The eye sees one even step all round; small waves in the frame are hidden by it."
            if guide
            else "",
        )
        for number, (title, short) in enumerate(titles, start=1)
    ]
    made[2] = replace(made[2], hold=HOLDS["H1"], figures=(narrow_figure("figure-2", "2"),))
    made[3] = replace(
        made[3], hazards=(TOUCHED[1], TOUCHED[3]), warnings=("Ripping thin stock: push stick, guard on.",)
    )
    made[4] = replace(
        made[4],
        time="40 min an opening",
        tools=("pin gun", "38 mm pins", "straightedge", "PVA glue"),
        hazards=(TOUCHED[2], TOUCHED[5]),
        warnings=(
            "Pins can come out through the face. Keep your holding hand 150 mm clear of the muzzle, and wear eye "
            "protection.",
        ),
        actions=(
            "Dry-set the leg packers to the 5 mm line, then the head packer over them.",
            "Bare the timber where paint would stop the glue; bead of PVA on the packer.",
            "Pin every 250 mm and wipe off the squeeze-out.",
        ),
        figures=(jamb_figure("figure-3", "3"),),
        checks=(reading_check("5.1", not guide),),
        hold=HOLDS["H2"],
    )
    made[5] = replace(
        made[5],
        hazards=(TOUCHED[1], TOUCHED[3]),
        actions=("Opening 1: mitre both ends, long point 924 mm, short point 786 mm.", "Tack with two pins."),
    )
    made[8] = replace(made[8], hold=HOLDS["H3"])
    return tuple(_for_learner(step) for step in made) if guide else tuple(made)


def _for_learner(step: Step) -> Step:
    hold = replace(step.hold, releaser=Person(role="supervisor", name=""), deputy=None) if step.hold else None
    return replace(
        step,
        hold=hold,
        evidence=Evidence(
            ask="One photo: straightedge across packer and plaster, with a rule in shot.",
            criteria=(
                Criterion(code="P3", text="right quantity and quality of materials"),
                Criterion(code="P5", text="work matches the drawing"),
            ),
        ),
        mistakes=("Packing only where the pins go.", "Measuring the legs before the head is fitted."),
        question="What would you see a year from now if the packers were fitted only where the pins go?",
    )


def schedule(key: str) -> Table:
    """The openings with their worked sizes."""
    return Table(
        key=key,
        columns=(
            Column(head="Opening", width=34),
            Column(head="Width", align="right"),
            Column(head="Height", align="right"),
            Column(head="Mean set-back", align="right"),
            Column(head="Packer", align="right"),
            Column(head="Head long point", align="right", bold=True),
            Column(head="Legs long point", align="right", bold=True),
        ),
        rows=tuple(
            (f"{o.number} {o.name}", str(o.width), str(o.height), o.mean, o.packer, str(o.head), str(o.leg))
            for o in OPENINGS
        ),
        note="All sizes in mm, taken 10 November 2026. Architrave 69 × 18.",
    )


def front_page(issue: Issue) -> FrontPage:
    """What a supervisor asks, answered."""
    drafted = issue.status is Status.DRAFT
    return FrontPage(
        title_lines=("Architrave to", "a set-back frame"),
        under=(
            "Ottermere Reading Room refurbishment, four openings",
            "Client: the Ottermere Reading Room Trust",
        ),
        issue=issue,
        what=(
            "Fix architrave to one side of four door openings where the plaster stands 7 to 9 mm proud of the frame. "
            "A planed packer brings the frame's edge out to the plaster; the architrave is set on it, with quirks "
            "(the small even steps) of 5 and 4 mm.",
            "**Not included:** decoration, ironmongery. No opening is a fire door.",
        ),
        where=(
            "Ground floor, 3 Mill Lane, Ottermere. Built 2006; closed to readers.",
            "Monday 23 to Wednesday 25 November 2026, 08:00 to 16:30.",
        ),
        places=schedule("openings"),
        who=(
            Person(
                role="Supervisor, releases holds",
                name="Ines Carrow",
                firm="Pellow & Finch",
                phone="07700 900417",
            ),
            Person(role="Deputy", name="Joan Finch", firm="Pellow & Finch", phone="07700 900422"),
            Person(role="Joiners, all steps", name="Tomas Abery, Wren Hallam", firm="Pellow & Finch"),
            Person(role="First-aider on site", name="Dev Marlin", firm="Brindle Court", phone="07700 900438"),
        ),
        client=("Keep the porch way clear. Noise 09:00 to 12:00. The Trust's steward accepts the end.",),
        stop=StopBox(
            holds=(
                HoldLine(number="H1", what="Set-back readings agreed", when="after step 3"),
                HoldLine(number="H2", what="Packers seen, before they are covered", when="after step 5"),
                HoldLine(number="H3", what="Finished work accepted", when="after step 9"),
            ),
            stop_if=(
                "a board or pipe not in the survey appears",
                "the detector sounds where a pin is to go",
                "extraction fails, or its filter warning shows",
                "anyone not briefed is inside the barrier",
            ),
            restart="Anyone may stop the work. Make it safe, tell Ines Carrow; only she, or her deputy, starts it again.",
        ),
        emergency=(
            EmergencyColumn(title="Call 999", lines=("3 Mill Lane, Ottermere. Wait at the gate.",)),
            EmergencyColumn(
                title="Hurt", lines=("Dev Marlin; kit on the hall table. Hospital: 18 min, Ashby Cross.",)
            ),
            EmergencyColumn(title="Fire", lines=("Leave by porch or kitchen door. Meet at the lychgate.",)),
            EmergencyColumn(
                title="Shut off", lines=("Electricity: porch cupboard. Water: kitchen sink. No gas.",)
            ),
        ),
        control=DocumentControl(
            signatories=(
                Signatory(act="Written", name="Wren Hallam", role="Joiner", date="11 Nov 2026"),
                Signatory(
                    act="Checked",
                    name="Ines Carrow",
                    role="Supervisor",
                    date="" if drafted else "13 Nov 2026",
                ),
                Signatory(
                    act="Approved", name="Joan Finch", role="Director", date="" if drafted else "16 Nov 2026"
                ),
            ),
            notes=("Since P02: opening 4 added. Based on drawing ORR-214 rev C, survey OS-3.",),
        ),
    )


def cut_list() -> PieceList:
    """Heads and handed legs of all four openings."""
    pieces: list[Piece] = []
    for o in OPENINGS:
        common = {"opening": o.number, "section": "69 × 18 torus"}
        pieces.append(
            Piece(
                mark=f"{o.number}H",
                piece="Head",
                long_point=str(o.head),
                short_point=str(o.head - 2 * ARCHITRAVE),
                ends="45° both",
                **common,
            )
        )
        for hand in ("left", "right"):
            pieces.append(
                Piece(
                    mark=f"{o.number}{hand[0].upper()}",
                    piece="Leg",
                    hand=hand,
                    long_point=str(o.leg),
                    short_point=str(o.leg - ARCHITRAVE),
                    ends="45° top, square foot",
                    **common,
                )
            )
    return PieceList(
        key="cut-list",
        title="Cutting list",
        intro="Legs are marked from the fitted head; the sizes here are for cutting over-long.",
        pieces=tuple(pieces),
        note="Sizes in mm.",
    )


def comparison() -> Comparison:
    """Three ways, one chosen and one refused."""
    return Comparison(
        key="ways",
        title="Ways compared",
        intro="For a set-back of 7 to 9 mm.",
        ways=(
            Way(
                name="Packer with double quirk",
                chosen=True,
                costs=("16.6 m of packer, 12 packers to rip and fix.",),
                leaves=("Outer edge 18 mm, full; skirting of 15 mm sits 3 mm back.",),
            ),
            Way(
                name="Rebated back",
                costs=("13 pieces through the router table.",),
                leaves=("Outer edge 9.5 mm.",),
                refused=("Skirting would stand 5.5 mm proud of the outer edge; least allowed is 0 mm.",),
            ),
            Way(name="Ease the plaster", costs=("Dust, making good.",), leaves=("Frame and plaster level.",)),
        ),
    )


def workings() -> Workings:
    """A quantity worked at every opening, and one written value, with where each number came from."""
    cases = tuple(
        WorkingCase(
            scope=o.number,
            lines=(f"= {o.height} mm + 5 mm + 4 mm + 69 mm", f"= {o.leg} mm"),
            result=f"{o.leg} mm",
            origins=(
                Origin(
                    name="Clear height", value=f"{o.height} mm", place=f"jobs/doors.csv:{int(o.number) + 1}"
                ),
            ),
        )
        for o in OPENINGS
    )
    quirk = Origin(name="First quirk", value="5 mm", place="default, architrave.yaml:18")
    leg = Working(
        label="Leg to the long point",
        formula="leg_long_point = opening_height + first_quirk + second_quirk + architrave.width",
        cases=cases,
        origins=(quirk,),
    )
    written = Working(label="Step", formula="step = 5 mm", cases=(WorkingCase(lines=(), result="5 mm"),))
    return Workings(
        key="annex-workings",
        title="Workings",
        intro="Every size in this document.",
        workings=(leg, written) * 9,
    )


SECTIONS = (
    Section(
        key="s03",
        title="Duty holders and contacts",
        text=("The client is commercial. There is one contractor on the project.",),
        rows=(
            Fact(label="Client", text="Ottermere Reading Room Trust"),
            Fact(label="Contractor", text="Pellow & Finch"),
        ),
    ),
    Section(
        key="s11",
        title="Asbestos",
        not_applicable=NotApplicable(
            reason="Construction was wholly started in 2006; completion certificate seen, file OS-1.",
            decided_by="Ines Carrow",
        ),
    ),
    Section(
        key="s14",
        title="Manual handling",
        text=(
            "The heaviest piece is one length of architrave, 4.4 m and 3.9 kg.",
            "- one person carries it\n- ends watched",
        ),
    ),
    Section(key="s22", title="Waste and environment", text=("Offcuts bagged by kind at the saw each day.",)),
)
ASKED = (
    Section(
        key="s11",
        title="Asbestos",
        questions=(
            "Was any part of the building, or any board in it, there before 2000?",
            "Who holds the register?",
        ),
    ),
    Section(key="s21", title="Welfare", questions=("Where are water, toilet and first-aid kit?",)),
)
CAUTIONS = Cautions(
    key="cautions",
    title="Before you rely on this",
    lines=(
        "Woodworking can maim and its dust can make you ill. Local law, the rules of the site and the competent person "
        "there come before anything printed here.",
        "Nothing here says that the work complies with or is approved by anyone.",
    ),
)
GLOSSARY = Glossary(
    key="words",
    title="Words of the trade",
    terms=(
        Term(
            word="Quirk",
            meaning="A small even step left between two edges, so that the eye does not seek them level.",
        ),
        Term(word="Long point", meaning="The longer side of a mitred piece, measured along its outer edge."),
    ),
)
POLICIES = PolicyNote(
    key="policies",
    title="Numbers that are policy",
    intro="Chosen by the house, neither measured nor worked out.",
    policies=(
        Policy(
            label="Least bearing",
            value="10 mm",
            reason="So that a pin has wood on both sides.",
            place="house-rules.yaml:9",
        ),
        Policy(label="Ripping step", value="0.5 mm", place="default"),
    ),
)


def issue_of(status: Status) -> Issue:
    """An issue with the dates its status allows."""
    if status is Status.DRAFT:
        return Issue(revision="P03", status=status, replaces="P02")
    return Issue(revision="C01", status=status, issued="16 Nov 2026", review_by="14 May 2027", replaces="P02")


def statement(status: Status = Status.FOR_CONSTRUCTION) -> Document:
    """The Reading Room's statement with every kind of block that a statement has."""
    issue = issue_of(status)
    return Document(
        kind="statement",
        lang="en-GB",
        number="SF-07",
        title="Architrave to a set-back frame",
        description="Method statement for four openings of the Ottermere Reading Room.",
        job="Ottermere Reading Room",
        company="Pellow & Finch Joinery",
        issue=issue,
        footer=("Method statement", f"Issued {issue.issued}" if issue.issued else "Not issued"),
        home=Link(text="All methods", href="../index.html"),
        links=(Link(text="All methods", href="../index.html"), Link(text="PDF", href="statement.pdf")),
        address="https://reading-room.example/sf-07",
        blocks=(
            front_page(issue),
            Contents(),
            Sequence(key="sequence", title="Sequence of work", steps=steps(guide=False)),
            HazardTable(
                key="hazards", title="Hazards and controls", hazards=HAZARDS, note="Strongest control first."
            ),
            Part(
                key="quantities",
                title="Quantities",
                blocks=(
                    replace(schedule("schedule"), title="Schedule of openings"),
                    cut_list(),
                    comparison(),
                    jamb_figure("figure-9", "9"),
                ),
            ),
            CheckList(
                key="checks", title="Checks", checks=(replace(reading_check("C1", True), who="Ines Carrow"),)
            ),
            Part(key="sections", title="Site, people and places", blocks=SECTIONS),
            POLICIES,
            GLOSSARY,
            CAUTIONS,
            SignOff(
                key="sign-off",
                title="Sign-off",
                signatories=(
                    Signatory(act="Work finished", name="Wren Hallam", role="Joiner"),
                    Signatory(act="Accepted", name="", role="Steward of the Trust"),
                ),
            ),
            ChangeRecord(
                key="change", title="Change during the work", lines=("What changed", "New controls")
            ),
            BriefingRecord(
                key="briefing", title="Briefing record", intro="Everyone briefed on revision C01 signs here."
            ),
            workings(),
        ),
    )


def guide() -> Document:
    """The task guide of the same method, with every kind of block that a guide has."""
    return Document(
        kind="guide",
        lang="en-GB",
        number="SF-07",
        title="Architrave to a set-back frame",
        description="Task guide: bring the frame's edge out with packers, then fix architrave with two quirks.",
        company="Pellow & Finch Joinery",
        footer=("Task guide SF-07",),
        home=Link(text="All methods", href="../index.html"),
        links=(Link(text="All methods", href="../index.html"), Link(text="Print", href="guide.pdf")),
        blocks=(
            TaskSummary(
                stage="second fixing",
                title_lines=("Architrave to", "a set-back frame"),
                summary=(
                    "Bring the frame's edge out to the plaster with packers, then fix the architrave with two quirks.",
                ),
                facts=(
                    Fact(label="Time", text="About 3 h an opening"),
                    Fact(label="Tools", text="Chop saw, pin gun"),
                ),
                figure=jamb_figure("figure-1", "1"),
            ),
            Contents(),
            LearnerRecord(key="record", title="Your record", lines=("Learner", "Unit", "Date", "Tutor")),
            MeasurementTable(
                key="measure",
                title="Take these on site",
                row_head="Opening",
                columns=("Width", "Height", "Left foot", "Left middle", "Head", "Right foot"),
                rows=("1", "2", "3"),
                note="Sizes in mm.",
            ),
            StopList(
                key="stop",
                title="Stop at once if",
                lines=("the detector sounds", "the extraction fails"),
                restart="Anyone may stop the work. The supervisor starts it again.",
            ),
            Sequence(key="steps", title="Steps", steps=steps(guide=True)),
            HazardTable(key="hazards", title="Hazards and controls", hazards=HAZARDS),
            Part(
                key="example", title="Worked example", blocks=(schedule("schedule"), cut_list(), comparison())
            ),
            Part(key="ask", title="Ask on site", blocks=ASKED),
            QuestionList(
                key="questions",
                title="Think it through",
                questions=(
                    Question(text="Why is the packer stepped back and not brought flush?", step=1),
                    Question(text="What would 2 mm of taper do to the look?"),
                ),
            ),
            Text(text=("Keep this guide with your evidence.",)),
            GLOSSARY,
            CAUTIONS,
            POLICIES,
        ),
    )


def index() -> Document:
    """The index with two stages."""
    entry = MethodEntry(
        number="SF-07",
        title="Architrave to a set-back frame",
        summary="Packers and two quirks where the plaster stands proud.",
        facts=("9 steps", "3 hold points", "3 h an opening"),
        picture=section_picture(80),
        links=(Link(text="Task guide", href="sf-07/index.html"), Link(text="PDF", href="sf-07/guide.pdf")),
        jobs=(
            JobEntry(
                title="Ottermere Reading Room",
                issue=issue_of(Status.FOR_CONSTRUCTION),
                links=(
                    Link(text="Statement", href="doors/index.html"),
                    Link(text="PDF", href="doors/statement.pdf"),
                ),
            ),
        ),
    )
    skirting = replace(
        entry, number="SF-02", title="Skirting, scribed and mitred", jobs=(), facts=("12 steps",)
    )
    lining = replace(skirting, number="FF-01", title="Door lining")
    return Document(
        kind="index",
        lang="en-GB",
        title="Methods",
        description="3 methods, in the order of the job",
        company="Pellow & Finch Joinery",
        blocks=(
            MethodList(
                stages=(
                    Stage(key="first-fixing", title="First fixing", methods=(lining,)),
                    Stage(key="second-fixing", title="Second fixing", methods=(entry, skirting)),
                )
            ),
            CAUTIONS,
            ChangeLog(
                key="changes",
                title="What changed lately",
                changes=(
                    Change(
                        day="12 November 2026",
                        text="Packers pinned as well.",
                        title="SF-07",
                        href="sf-07/index.html",
                    ),
                ),
            ),
            UseList(
                key="by-tool",
                title="By tool",
                used=(
                    Used(
                        key="saw",
                        name="Saw",
                        uses=(Use(number="SF-07", href="sf-07/index.html", steps=(8,)),),
                    ),
                ),
            ),
        ),
    )


def card() -> Document:
    """A bench card of two openings."""
    figure = Figure(
        key="card-section",
        caption="Section at the jamb",
        picture=section_picture(112),
        scale="1:1",
        items=(KeyItem(letter="A", text="architrave"), KeyItem(letter="B", text="packer")),
    )
    return Document(
        kind="card",
        lang="en-GB",
        number="SF-07",
        title="Bench card: Architrave to a set-back frame",
        description="Bench card of the Reading Room doors.",
        job="Ottermere Reading Room",
        company="Pellow & Finch Joinery",
        issue=issue_of(Status.FOR_CONSTRUCTION),
        footer=("For construction", "Issued 16 November 2026"),
        blocks=(
            BenchCard(
                key="card-1-2",
                under="Bench card SF-07, Ottermere Reading Room",
                title="Architrave to a set-back frame",
                revision="C01",
                columns=(
                    CardColumn(mark="1", name="Porch to hall"),
                    CardColumn(mark="2", name="Hall to kitchen"),
                ),
                rows=(
                    CardRow(label="Packer", note="24 mm wide", sizes=("8.5", "9.0")),
                    CardRow(label="Head", note="long point", sizes=("924", "")),
                ),
                figure=figure,
                checks=(CardCheck(what="First quirk at every mark", limit="0.5 mm"),),
                order=("**5** Cut the packers", "**6** Glue and pin the packers, **H2**"),
                holds=(HoldLine(number="H2", what="Before packers are covered", when="after step 6"),),
                releaser="Ines Carrow, 07700 900417",
                stop_if=("the detector sounds", "extraction fails"),
                emergency=(Fact(label="Hurt", text="Dev Marlin, hall table"),),
            ),
        ),
    )


def tutor() -> Document:
    """A tutor pack with one answer and the marking points of one step."""
    return Document(
        kind="tutor",
        lang="en-GB",
        number="SF-07",
        title="Architrave to a set-back frame",
        description="Tutor pack: Architrave to a set-back frame.",
        company="Pellow & Finch Joinery",
        footer=("Tutor pack", "Not for learners"),
        links=(Link(text="To print (PDF)", href="tutor.pdf"),),
        blocks=(
            MarkingPoints(
                key="marking",
                title="What to look for",
                intro="Figures are those of the example sizes.",
                marks=(
                    Mark(
                        step=6,
                        title="Glue and pin the packers",
                        ask="Photo of each corner.",
                        criteria=("P2",),
                        points=("**First quirk:** within 0.5 mm.",),
                        mistakes=("Pinning near the edge.",),
                    ),
                ),
            ),
            AnswerKey(
                key="answers",
                title="Answers",
                answers=(
                    Answer(
                        question="Why one packer?",
                        answer="A step is seen side-on.",
                        step=2,
                        criteria=("P3",),
                    ),
                ),
            ),
        ),
    )
