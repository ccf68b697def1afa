"""A whole report, of good logs and of odd ones."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from pullcord.analysis.job.read import read_job_report
from pullcord.model.job import Entry, Job, Part, Wanted
from pullcord.model.meter import MeterSheet
from pullcord.model.procedure import Library
from tests.analysis.job.making import RUNS, SAFE, SPARKS, TIGHT, make_job, make_library


def test_everything_that_was_written_is_told_newest_first() -> None:
    """Every entry once, with its position in the file."""
    job = make_job(SAFE, SPARKS, TIGHT)
    report = read_job_report(job, make_library(job))
    assert report.job is job
    assert report.newest_first == ((2, job.log[2]), (1, job.log[1]), (0, job.log[0]))


def test_a_machine_that_is_ready_has_nothing_to_come() -> None:
    """All stages proved: no proof, no check, nothing to pay."""
    job = make_job(SAFE, SPARKS, TIGHT, RUNS, "{date: 2026-03-01, shows: drives}")
    report = read_job_report(job, make_library(job))
    assert {state.proof for state in report.stages} == {"proved"}
    assert (report.proofs, report.next_checks, report.purchases) == ((), (), ())
    assert report.money.expected == report.money.at_risk == 0


def test_a_job_alone_in_the_world_has_a_report() -> None:
    """No procedures, no sheets, no stages: nothing is known, and nothing breaks."""
    job = make_job(SAFE, SPARKS, "{date: 2026-02-05, value: source-coil, reading: 250 ohm}")
    report = read_job_report(job, Library(procedures={}))
    assert (report.stages, report.next_checks, report.series) == ((), (), ())
    assert report.left.drained == ("petrol",)


def test_a_meter_that_cannot_be_used_is_stood_in_for() -> None:
    """Its fault is a finding of the settings; the report reckons with a cheap one."""
    job = make_job("{date: 2026-02-05, value: source-coil, reading: 250 ohm}")
    meter = MeterSheet(leads="a bit")
    (series,) = read_job_report(job, make_library(job, meter=meter)).series
    assert series.points[0].half_width > 0


def test_the_same_log_gives_the_same_report() -> None:
    """Nothing hangs on the order of a set or on the clock."""
    job = make_job(SAFE, "{date: 2026-02-02, fits: [bypass, test-lead], opens: [guard, petrol]}")
    library = make_library(job)
    assert repr(read_job_report(job, library)) == repr(read_job_report(job, library))


NAMES = st.sampled_from(
    ["spark", "leak", "idle", "gap", "coil", "look", "plug", "tap", "source-coil", "runs", "odd"]
)
SOME = st.lists(NAMES, max_size=2).map(tuple)
ENTRIES = st.builds(
    Entry,
    date=st.sampled_from(["2026-02-01", "2026-02-02 19:30", "2020-01-01"]),
    procedure=st.none() | NAMES,
    step=st.none() | NAMES,
    cause=st.none() | NAMES,
    value=st.none() | NAMES,
    answer=st.none() | st.sampled_from(["done", "within", "tap", "no spark", "smells", "odd"]),
    reading=st.none() | st.sampled_from(["250 ohm", "OL", "3 V", "odd", "-1 ohm", "0 ohm"]),
    celsius=st.none() | st.sampled_from([-40.0, 60.0]),
    did=st.none() | st.just("Something."),
    parts=st.lists(
        st.builds(Part, title=st.just("P"), price=st.just(5), serves=NAMES, wanted=NAMES),
        max_size=1,
    ).map(tuple),
    shows=SOME,
    unproves=SOME,
    fits=st.sampled_from([(), ("bypass",)]),
)
WANTED = st.dictionaries(
    NAMES, st.builds(Wanted, title=st.just("W"), price=st.just(7), serves=NAMES, after=SOME)
)


@settings(max_examples=100, deadline=None, print_blob=True)
@given(st.lists(ENTRIES, max_size=6).map(tuple), WANTED)
def test_no_log_whatever_breaks_the_report(log: tuple[Entry, ...], wanted) -> None:
    """Names nobody knows, readings of nothing, days in no order: the report holds together."""
    job = Job(
        job="odd", machine="old-bike", taken_in="2026-01-01", purpose="-", most=90,
        wanted=wanted, log=log,
    )  # fmt: skip
    report = read_job_report(job, make_library(job))
    proved = {state.name for state in report.stages if state.proof == "proved"}
    assert {proof.stage for proof in report.proofs}.isdisjoint(proved)
    assert len(report.next_checks) <= 3
    for purchase in report.purchases:
        assert purchase.may_buy is not bool(purchase.waits_for)
        assert set(purchase.waits_for).isdisjoint(proved)
    assert report.money.low <= report.money.high
    assert report.money.is_past_stop is (report.money.spent + report.money.expected > 90)
