"""What the guide says about job logs is what may be written."""

from __future__ import annotations

import re
from pathlib import Path

import yaml

from pullcord.model.base import kebab
from pullcord.model.job import Entry, Job

GUIDE = (Path(__file__).parents[2] / "guide" / "jobs.md").read_text(encoding="utf-8")


def test_the_guides_example_is_a_job() -> None:
    """It can be copied as it stands."""
    (example,) = re.findall(r"```yaml\n(.*?)```", GUIDE, re.DOTALL)
    data = yaml.load(example, Loader=yaml.BaseLoader)  # noqa: S506 (every scalar stays text)
    job = Job.model_validate(data)
    assert [entry.date for entry in job.log] == ["2026-02-21", "2026-03-07 18:30"]


def test_the_guide_names_no_key_that_is_none() -> None:
    """Every key in its table is one of an entry's."""
    rows = re.findall(r"^\| (`.*?) \|", GUIDE, re.MULTILINE)
    keys = {key for row in rows for key in re.findall(r"`([a-z-]+)`", row)}
    assert len(keys) > 15
    assert keys - {kebab(field) for field in Entry.model_fields} == set()
