"""Slow pure steps shared out among worker processes, each remembered, the results in the order asked for."""

from __future__ import annotations

import multiprocessing
import os
import signal
import threading
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import Future, ProcessPoolExecutor, as_completed
from concurrent.futures.process import BrokenProcessPool
from dataclasses import dataclass
from types import TracebackType
from typing import Any

from generator.memory import Memory, canonical
from generator.problems import MachineLacks
from generator.publishing.progress import UNWATCHED, Progress

Work = Callable[[Any], bytes]


@dataclass(frozen=True, slots=True, kw_only=True)
class Task:
    """One slow pure step: what it is called, the function of a module that does it, and its whole input.

    The result is remembered by the spelling (see `canonical`) of `by`, which must say everything that `of`
    depends on; left out, it is `of` itself.
    """

    step: str
    work: Work
    of: object
    by: object = None

    def payload(self) -> bytes:
        """What the result is remembered by, in bytes."""
        return canonical(self.of if self.by is None else self.by)


class Crew:
    """Does tasks and remembers them, on `workers` processes that are started only when there is work.

    With one worker the work is done in this process. Raises MachineLacks when a worker dies; what a task
    raises is raised here.
    """

    def __init__(self, memory: Memory, workers: int, progress: Progress = UNWATCHED) -> None:
        self._memory = memory
        self._workers = workers
        self._progress = progress
        self._pool: ProcessPoolExecutor | None = None

    def __enter__(self) -> Crew:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        if self._pool:
            self._pool.shutdown(cancel_futures=True)
        self._memory.trim()

    def perform(self, stage: str, tasks: Sequence[Task]) -> tuple[bytes, ...]:
        """The result of each task, in the order of `tasks`; equal tasks are done once."""
        keys = [self._memory.key(task.step, task.payload()) for task in tasks]
        known = {key: self._memory.recall(key) for key in dict.fromkeys(keys)}
        todo = {key: task for key, task in zip(keys, tasks, strict=True) if known[key] is None}
        self._progress.stage(stage, len(todo))
        results = {key: value for key, value in known.items() if value is not None}
        for key, value in self._done(todo):
            self._memory.keep(key, value)
            self._progress.done()
            results[key] = value
        return tuple(results[key] for key in keys)

    def _done(self, todo: dict[str, Task]) -> Iterator[tuple[str, bytes]]:
        if not todo:
            return iter(())
        return self._here(todo) if self._workers == 1 else self._shared_out(todo)

    def _here(self, todo: dict[str, Task]) -> Iterator[tuple[str, bytes]]:
        return ((key, _do(task)) for key, task in todo.items())

    def _shared_out(self, todo: dict[str, Task]) -> Iterator[tuple[str, bytes]]:
        self._pool = self._pool or _pool(self._workers)
        waiting: dict[Future[bytes], str] = {self._pool.submit(_do, task): key for key, task in todo.items()}
        try:
            for future in as_completed(waiting):
                yield waiting[future], future.result()
        except BrokenProcessPool as error:
            raise MachineLacks("worker-died", workers=self._workers) from error


def usual_workers() -> int:
    """One worker for each core this process may use."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


def _pool(workers: int) -> ProcessPoolExecutor:
    # A fork of a process that has threads (the progress bar) may hang; the fork server has none.
    context = multiprocessing.get_context("forkserver")
    return ProcessPoolExecutor(workers, mp_context=context, initializer=_begin_worker)


def _begin_worker() -> None:
    """End at once and quietly on Ctrl-C, and with the publisher however it ends."""
    signal.signal(signal.SIGINT, signal.SIG_DFL)
    parent = multiprocessing.parent_process()
    if parent:
        threading.Thread(target=_end_with, args=(parent.join,), daemon=True).start()


def _end_with(wait: Callable[[], None]) -> None:
    wait()
    os._exit(1)


def _do(task: Task) -> bytes:
    return task.work(task.of)
