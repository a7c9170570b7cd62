"""The programme: against networkx, against days worked minute by minute, and as a person sets it out."""

from __future__ import annotations

import networkx
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.quantities.programme import CLOCK_DAY, Programme, Task, programme, programme_of
from tests.quantities.folders import job_text, method_text, work
from tests.quantities.published import PLANT_AFTER, PLANT_CRITICAL, PLANT_LONGEST, PLANT_WEEKS

PACKERS = (
    Task(number=1, work=40, after=()),
    Task(number=2, work=60, wait=30, after=(1,)),
    Task(number=3, work=20, crew=2, after=(1,)),
    Task(number=4, work=100, wait=720, after=(2, 3)),
    Task(number=5, work=30, after=(4,)),
)


def spans(made: Programme) -> list[tuple[int, int, int, int]]:
    return [(bar.start, bar.finish, bar.ready, bar.slack) for bar in made.bars]


def test_a_step_begins_when_what_it_comes_after_is_done_and_dry() -> None:
    assert spans(programme(PACKERS)) == [
        (0, 40, 40, 0), (40, 100, 130, 0), (40, 60, 60, 70), (130, 230, 950, 0), (950, 980, 980, 0),
    ]  # fmt: skip


def test_the_steps_that_decide_the_end_are_told() -> None:
    made = programme(PACKERS)
    assert (made.critical, made.end) == ((1, 2, 4, 5), 980)


def test_hands_are_counted_where_steps_overlap() -> None:
    made = programme(PACKERS)
    assert (made.most_at_once, made.person_minutes) == (3, 270)
    assert [bar.beside for bar in made.bars] == [(), (3,), (2,), (), ()]


def test_a_wait_runs_on_through_the_night() -> None:
    """Eight hours a day: what is glued at 230 min is dry at 950, before the next morning begins."""
    made = programme(PACKERS, day=480)
    assert spans(made)[3:] == [(130, 230, 950, 250), (1440, 1470, 1470, 0)]
    assert made.critical == (5,)


def test_work_stops_at_the_end_of_the_day_and_goes_on_in_the_morning() -> None:
    made = programme((Task(number=1, work=500), Task(number=2, work=460, after=(1,))), day=480)
    assert spans(made) == [(0, 1460, 1460, 0), (1460, 1920, 1920, 0)]


TASKS = st.lists(
    st.tuples(
        st.integers(0, 300),
        st.sampled_from((0, 0, 0, 30, 240, 1500)),
        st.integers(1, 3),
        st.sets(st.integers(1, 12)),
    ),
    min_size=1,
    max_size=12,
).map(
    lambda rows: tuple(
        Task(
            number=number, work=work, wait=wait, crew=crew,
            after=tuple(sorted(each for each in after if each < number)),
        )
        for number, (work, wait, crew, after) in enumerate(rows, 1)
    )
)  # fmt: skip


def network(tasks: tuple[Task, ...]) -> networkx.DiGraph:
    """Start and end of the job, each step with an edge to what follows it as long as its work and wait."""
    graph = networkx.DiGraph()
    for task in tasks:
        graph.add_edge("begin", task.number, weight=0)
        graph.add_edge(task.number, "end", weight=task.work + task.wait)
        for before in task.after:
            earlier = tasks[before - 1]
            graph.add_edge(before, task.number, weight=earlier.work + earlier.wait)
    return graph


@settings(max_examples=150, deadline=None)
@given(TASKS)
def test_the_longest_path_agrees_with_networkx(tasks: tuple[Task, ...]) -> None:
    made, graph = programme(tasks), network(tasks)
    assert made.end == networkx.dag_longest_path_length(graph)
    assert set(networkx.dag_longest_path(graph)) - {"begin", "end"} <= set(made.critical)


def test_the_published_plant_takes_its_forty_four_weeks() -> None:
    """Each letter a step, in an order in which what it comes after stands before it."""
    letters = "ABCDEFGHIJKLMN"
    made = programme(
        tuple(
            Task(
                number=letters.index(each) + 1,
                work=PLANT_WEEKS[each],
                after=tuple(letters.index(before) + 1 for before in PLANT_AFTER[each]),
            )
            for each in letters
        )
    )
    assert made.end == PLANT_LONGEST
    assert "".join(letters[number - 1] for number in made.critical) == PLANT_CRITICAL


@settings(max_examples=60, deadline=None)
@given(TASKS)
def test_slack_is_the_end_less_the_longest_way_through_a_step(tasks: tuple[Task, ...]) -> None:
    made, graph = programme(tasks), network(tasks)
    for bar in made.bars:
        through = [
            sum(graph.edges[edge]["weight"] for edge in networkx.utils.pairwise(path))
            for path in networkx.all_simple_paths(graph, "begin", "end")
            if bar.task.number in path
        ] if len(tasks) <= 7 else []  # fmt: skip
        if through:
            assert bar.slack == made.end - max(through)


@settings(max_examples=60, deadline=None)
@given(TASKS)
def test_what_may_overlap_is_what_no_path_joins(tasks: tuple[Task, ...]) -> None:
    closed = networkx.transitive_closure_dag(network(tasks).subgraph(range(1, len(tasks) + 1)))
    for bar in programme(tasks).bars:
        own = bar.task.number
        free = {n for n in closed if n != own and not closed.has_edge(own, n) and not closed.has_edge(n, own)}
        assert set(bar.beside) == free


def worked_minute_by_minute(tasks: tuple[Task, ...], day: int) -> list[tuple[int, int]]:
    left, ready, spans = {t.number: t.work for t in tasks}, {}, {}
    clock = 0
    while len(ready) < len(tasks):
        for task in tasks:
            if task.number in ready or any(ready.get(b, clock + 1) > clock for b in task.after):
                continue
            if task.work == 0:
                spans[task.number], ready[task.number] = (clock, clock), clock + task.wait
        for task in tasks:
            waiting = any(ready.get(b, clock + 1) > clock for b in task.after)
            if task.number in ready or waiting or clock % CLOCK_DAY >= day:
                continue
            first = spans.get(task.number, (clock, clock))[0]
            left[task.number] -= 1
            spans[task.number] = first, clock + 1
            if left[task.number] == 0:
                ready[task.number] = clock + 1 + task.wait
        clock += 1
    return [spans[task.number] for task in tasks]


@settings(max_examples=40, deadline=None)
@given(TASKS.filter(lambda tasks: len(tasks) <= 6), st.sampled_from((60, 240, 480, 1440)))
def test_days_and_nights_agree_with_work_done_minute_by_minute(tasks: tuple[Task, ...], day: int) -> None:
    made = programme(tasks, day)
    assert [(bar.start, bar.finish) for bar in made.bars] == worked_minute_by_minute(tasks, day)


@settings(max_examples=60, deadline=None)
@given(TASKS, st.sampled_from((None, 240, 480)), st.data())
def test_a_step_that_slips_by_its_slack_keeps_the_end_and_by_a_minute_more_does_not(tasks, day, data) -> None:
    made = programme(tasks, day)
    bar = data.draw(st.sampled_from(made.bars))
    for more, kept in ((0, True), (1, False)):
        late = tuple(
            Task(number=t.number, work=t.work + bar.slack + more, wait=t.wait, crew=t.crew, after=t.after)
            if t.number == bar.task.number
            else t
            for t in tasks
        )
        if bar.task.work:
            assert (programme(late, day).end <= made.end) is kept


@settings(max_examples=60, deadline=None)
@given(TASKS, st.sampled_from((None, 480)))
def test_no_step_is_done_sooner_when_another_takes_longer(tasks: tuple[Task, ...], day: int | None) -> None:
    longer = (Task(number=1, work=tasks[0].work + 17, wait=tasks[0].wait, after=()), *tasks[1:])
    for before, after in zip(programme(tasks, day).bars, programme(longer, day).bars, strict=True):
        assert after.finish >= before.finish


STEPS = """
steps:
  - {title: One, do: [x], why: y, minutes: 5, wait_minutes: 10}
  - {title: Two, do: [x], why: y, minutes: 7, after: [], crew: 2}
  - {title: Three, do: [x], why: y, minutes: 4, after: [1, 2]}
"""


def with_steps(steps: str) -> str:
    whole = method_text()
    return whole[: whole.index("steps:")] + steps.lstrip()


def test_the_minutes_of_a_step_are_taken_at_every_opening(tmp_path) -> None:
    made = programme_of(work(tmp_path, with_steps(STEPS), job_text()).ledger)
    assert [bar.task.work for bar in made.bars] == [10, 14, 8]
    assert spans(made) == [(0, 10, 20, 0), (0, 14, 14, 6), (20, 28, 28, 0)]


def test_a_step_comes_after_the_one_before_where_nothing_is_said(tmp_path) -> None:
    made = programme_of(work(tmp_path, with_steps(STEPS.replace(", after: [1, 2]", ""))).ledger)
    assert [bar.task.after for bar in made.bars] == [(), (), (2,)]


@pytest.mark.parametrize(
    ("old", "new", "fault"),
    [
        ("after: [1, 2]", "after: [3]", "Step 3 cannot come after step 3."),
        ("after: [1, 2]", "after: [0]", "Step 3 cannot come after step 0."),
        ("after: []", "after: [3]", "Step 2 cannot come after step 3."),
        ("crew: 2", "crew: 0", "A step without anyone to do it."),
        ("minutes: 4", "minutes: 4, runs: {tape: 1}", "“tape” runs in a step that does not use it."),
    ],
)
def test_an_order_that_cannot_be_is_told(tmp_path, old: str, new: str, fault: str) -> None:
    made = work(tmp_path, with_steps(STEPS.replace(old, new)), sound=False)
    assert [line.partition(" error: ")[2].partition(" |")[0] for line in made.faults] == [fault]
