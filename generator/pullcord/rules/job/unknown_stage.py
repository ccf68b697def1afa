"""A stage that is named is one of the list.

Parts serve a stage, and wait for stages; entries show a stage by hand, or take its proof back. A
stage nobody knows would never be proved, and what serves it never bought. Nor can anything serve a
stage that the job itself leaves out.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator

from pullcord.finding import Flaw, Place
from pullcord.model.job import Job
from pullcord.model.nearest import did_you_mean, listed
from pullcord.model.procedure import Library
from pullcord.rules.example_job import job_example, mended

ID = "unknown-stage"

MENDED = job_example(
    """
    wanted:
      washer: {title: Hose washer, price: 1.20, serves: primes}
    log:
      - date: 2026-02-07
        did: Water came after 40 seconds, three times.
        shows: primes
    """,
    "pump-stages.yaml",
)

FAILING = mended(MENDED, "shows: primes", "shows: prime")


def check(job: Job, library: Library) -> Iterator[Flaw]:
    """Yield a flaw for every name of a stage that is not in the list."""
    stages = [name for name in library.stages if name not in job.leaves_out]
    yield from _unknown(_each(("leaves-out",), job.leaves_out), library.stages)
    yield from _unknown(_named(job), stages)


def _unknown(named: Iterable[tuple[Place, str]], stages: Collection[str]) -> Iterator[Flaw]:
    for place, name in named:
        if name not in stages:
            known = f"the stages are {listed(stages)}" if stages else ""
            mend = did_you_mean(name, stages, known or "write a list of stages first")
            yield Flaw(place, f"there is no stage `{name}`", mend)


def _named(job: Job) -> Iterator[tuple[Place, str]]:
    for key, want in job.wanted.items():
        yield ("wanted", key, "serves"), want.serves
        yield from _each(("wanted", key, "after"), want.after)
    for place, entry in enumerate(job.log):
        yield from _each(("log", place, "shows"), entry.shows)
        yield from _each(("log", place, "unproves"), entry.unproves)
        for number, part in enumerate(entry.parts):
            if part.serves is not None:
                yield ("log", place, "parts", number, "serves"), part.serves


def _each(place: Place, names: Iterable[str]) -> Iterator[tuple[Place, str]]:
    return (((*place, number), name) for number, name in enumerate(names))
