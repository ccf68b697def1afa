"""The SARIF report against the published JSON schema of SARIF 2.1.0.

`sarif-2.1.0-rtm.4.json` beside this file is the schema of the OASIS Committee Specification 01 of
SARIF 2.1.0, as it comes with the package `sarif_om` 1.0.4 (Microsoft, MIT licence: see the file
beside it), with line feeds for its line ends. `jsonschema` holds the report against it.
"""

from __future__ import annotations

import json
from copy import deepcopy
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from pullcord.rules.report.made import Report
from pullcord.rules.report.sarif import sarif_report
from tests.rules.files import check_files
from tests.rules.report.found import REPORT

CORPUS = Path(__file__).parents[1] / "corpus"
SCHEMA = json.loads(Path(__file__).with_name("sarif-2.1.0-rtm.4.json").read_bytes())
VALIDATOR = jsonschema.Draft4Validator(
    SCHEMA, format_checker=jsonschema.Draft4Validator.FORMAT_CHECKER
)


def faults(log: Any) -> list[str]:
    """Return what the schema finds wrong."""
    return [error.message for error in VALIDATOR.iter_errors(log)]


def corpus() -> Report:
    """Return the report about every broken file there is."""
    files = {path.name: path.read_bytes() for path in sorted(CORPUS.glob("*.yaml"))}
    return Report(check_files(files))


@pytest.mark.parametrize(
    "report", [REPORT, Report(()), corpus()], ids=["a few", "none", "every broken file"]
)
def test_a_report_is_valid(report: Report) -> None:
    """Whatever was found, and when nothing was."""
    log = json.loads(sarif_report(report))
    assert faults(log) == []
    assert len(log["runs"][0]["results"]) == len(report.findings) + len(report.allowed)


def test_the_schema_can_refuse() -> None:
    """The check above could fail: line 0, a level of our own, no message."""
    log = json.loads(sarif_report(REPORT))
    assert faults(log) == []
    for change in (
        lambda result: result["locations"][0]["physicalLocation"]["region"].update(startLine=0),
        lambda result: result.update(level="grave"),
        lambda result: result.pop("message"),
    ):
        spoilt = deepcopy(log)
        change(spoilt["runs"][0]["results"][0])
        assert faults(spoilt) != []


def test_what_it_says() -> None:
    """Place, rule, level, message; what is allowed is suppressed in the source, with its reason."""
    (run,) = json.loads(sarif_report(REPORT))["runs"]
    names = [rule["id"] for rule in run["tool"]["driver"]["rules"]]
    assert names == ["unknown-target", "unused-tool"]
    assert all(names[each["ruleIndex"]] == each["ruleId"] for each in run["results"])
    first, second, _, allowed = run["results"]
    place = first["locations"][0]["physicalLocation"]
    # RFC 3986, section 2.1: what is not an unreserved or a reserved character is percent-encoded.
    assert place["artifactLocation"]["uri"] == "file:///yard/a%20b%2C%C3%A9%3A1%25.yaml"
    assert second["locations"][0]["physicalLocation"] == {
        "artifactLocation": {"uri": "procedures/no-prime.yaml"},
        "region": {"startLine": 19, "startColumn": 7},
    }
    assert allowed["suppressions"] == [
        {"kind": "inSource", "justification": "it hangs by the pump"}
    ]
    assert "suppressions" not in first
