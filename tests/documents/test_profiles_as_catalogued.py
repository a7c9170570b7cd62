"""A moulding is drawn to the measures of its catalogue entry, whichever profile a job binds."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest
from shapely.geometry import LineString, Polygon

from generator.documents.figures import bench_order, wanted
from generator.drawings.orders import BENCH, PAPER, PHONE, Order
from generator.drawings.pens import ARRIS
from generator.drawings.registry import Drawn, lay
from generator.model.folder import Project
from generator.model.tables import Table
from generator.problems import ProblemLog
from generator.quantities.ledger import Ledger
from generator.quantities.work import work_out

HAIR = 0.001
WIDTHS = (PAPER, PHONE)
KEYS = ("torus-69x18-mdf", "torus-94x18-mdf", "ogee-69x19-softwood")


def bound_to(key: str, project: Project, method: str = "SF-07", role: str = "architrave") -> Ledger:
    """A method worked out with another material in a role."""
    found = project.method(method)
    assert found is not None
    keys = found.materials
    other = {**keys, role: replace(keys[role], value=key)}
    swapped = found.model_copy(update={"materials": Table(other, {}, keys.lost)})
    log = ProblemLog()
    ledger = work_out(swapped, None, project, log)
    assert not log.has_errors, list(log)
    return ledger


def order_of(name: str, ledger: Ledger) -> Order:
    return next(one.order for one in wanted(ledger, ProblemLog()) if one.order.name == name)


def laid(order: Order, width: float) -> Drawn:
    return lay(order.name, dict(order.values), width)


def measures_of(project: Project, key: str) -> dict[str, float]:
    entry = project.catalogue.materials[key]
    assert entry.width is not None
    assert entry.thickness is not None
    sizes = {"width": entry.width, "thickness": entry.thickness, **entry.geometry}
    return {name: float(size.value.magnitude) for name, size in sizes.items()}


class Rule:
    """A section laid down with its inner back corner at nought, to read heights off."""

    def __init__(self, drawn: Drawn) -> None:
        ring = drawn.sheet.outlines["architrave"].real
        inner, back = max(x for x, _ in ring), max(y for _, y in ring)
        self.section = Polygon([(inner - x, back - y) for x, y in ring])

    def height(self, u: float) -> float:
        return float(self.section.intersection(LineString([(u, -1.0), (u, 99.0)])).bounds[3])


def assert_torus(rule: Rule, of: dict[str, float]) -> None:
    neck, inner, radius = of["thickness"] - of["radius"], of["inner_fillet"], of["radius"]
    after = inner + 2 * radius
    assert rule.height(inner / 2) == pytest.approx(neck)
    assert rule.height(inner - HAIR) == pytest.approx(neck)
    assert rule.height(inner + HAIR) > neck + HAIR
    assert rule.height(inner + radius) == pytest.approx(of["thickness"], abs=0.02)
    assert rule.height(after + of["outer_fillet"] - HAIR) == pytest.approx(neck)
    assert rule.height(after + of["outer_fillet"] + HAIR) == pytest.approx(of["thickness"])


def assert_ogee(rule: Rule, of: dict[str, float]) -> None:
    assert rule.height(HAIR) == pytest.approx(of["thickness"] - of["depth"], abs=0.02)
    assert rule.height(of["breadth"] / 2) == pytest.approx(of["thickness"] - of["depth"] / 2, abs=0.02)
    assert rule.height(of["breadth"]) == pytest.approx(of["thickness"], abs=0.02)
    assert rule.height(of["breadth"] - 2.0) < of["thickness"] - 0.02


def assert_as_catalogued(drawn: Drawn, key: str, of: dict[str, float]) -> None:
    rule = Rule(drawn)
    assert rule.section.bounds == pytest.approx((0.0, 0.0, of["width"], of["thickness"]))
    {"torus": assert_torus, "ogee": assert_ogee}[key.partition("-")[0]](rule, of)


@pytest.mark.parametrize("key", KEYS)
@pytest.mark.parametrize("width", WIDTHS)
def test_the_jamb_s_architrave_has_the_catalogue_s_measures(key: str, width: float, project: Project) -> None:
    drawn = laid(order_of("jamb_section", bound_to(key, project)), width)
    assert_as_catalogued(drawn, key, measures_of(project, key))


@pytest.mark.parametrize("key", KEYS)
def test_so_has_the_rod_s_on_a_bench_card(key: str, project: Project) -> None:
    ledger = bound_to(key, project)
    order = bench_order(ledger, ledger.openings[0])
    assert order is not None
    assert order.name == "jamb_rod"
    assert_as_catalogued(laid(order, BENCH), key, measures_of(project, key))


@pytest.mark.parametrize(
    ("key", "lines"),
    [
        ("torus-94x18-mdf", lambda of: of["inner_fillet"] + 2 * of["radius"]),
        ("ogee-69x19-softwood", lambda of: of["breadth"]),
    ],
)
@pytest.mark.parametrize("width", WIDTHS)
def test_the_doorway_s_lines_lie_where_the_catalogue_has_an_edge_of_the_moulded_part(
    key: str, lines: Callable[[dict[str, float]], float], width: float, project: Project
) -> None:
    sheet = laid(order_of("doorway_elevation", bound_to(key, project)), width).sheet
    leg = sheet.outlines["left leg"]
    inner = max(x for x, _ in leg.paper)
    shown = {
        round((inner - stroke.points[0][0]) / leg.scale, 2) for stroke in sheet.strokes if stroke.pen == ARRIS
    }
    assert round(lines(measures_of(project, key)), 2) in shown


@pytest.mark.parametrize("key", ("torus-94x18-mdf", "ogee-58x15-softwood", "ovolo-57x15-softwood"))
def test_another_profile_in_the_stop_s_place_is_worked_and_drawn(key: str, project: Project) -> None:
    """The section's area is that of the outline drawn, whatever the profile."""
    ledger = bound_to(key, project, "SF-04", "stop")
    drawn = laid(order_of("moulding_profile", ledger), PAPER)
    entry = ledger.entry("stop_section", ledger.openings[0])
    assert entry is not None
    area = Polygon(drawn.sheet.outlines["moulding"].real).area
    assert area == pytest.approx(entry.result.area.number, abs=0.3)  # type: ignore[union-attr]
