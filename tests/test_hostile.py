"""Names, choices and figures refuse hostile text by a finding; all other fields take any words."""

from __future__ import annotations

from pathlib import Path

import pytest
from mkdocs.config.config_options import ListOfItems, Optional

from pullcord.errors import FindingsError
from pullcord.model.schema import KINDS
from pullcord.plugin import PullcordConfig
from pullcord.site.meter import read_meter
from pullcord.site.trouble import trouble_box
from tests.hostile import LINE
from tests.hostile_shed import FIELDS, errors_in, refused_in_turn, taken_fields
from tests.shed import SETTINGS

READ = {
    "Connector.blanks": "outside-connector",
    "Entry.answer": "unknown-log-answer",
    "Entry.reading": "unreadable-log-reading",
    "Evidence.answers": "unknown-evidence",
    "Expectation.limits": "unreadable-figure",
    "Pin.at": "outside-connector",
    "Pin.wire": "unknown-wire",
    "Reading.general": "unreadable-limits",
    "SheetValue.limits": "unreadable-figure",
}
"""Fields that look free to the model, and are read as something: the rule that refuses words."""


def test_the_shed_itself_is_faultless(tmp_path: Path) -> None:
    """So whatever is found below is said of the hostile text."""
    assert errors_in(tmp_path, ()) == ()


def test_every_kind_of_record_is_there() -> None:
    """A record new to a model has to be put into the shed; a new field of one comes by itself."""
    owners = {(field.file, field.owner) for field in FIELDS.values()}
    for kind, model in KINDS.items():
        assert {owner for file, owner in owners if file == kind} == {
            model.__name__, *model.model_json_schema()["$defs"]
        }  # fmt: skip


def test_names_and_choices_are_refused(tmp_path: Path) -> None:
    """Each by a finding that points at its line and says how to mend it."""
    closed = [number for number, field in FIELDS.items() if not field.is_free]
    refused = refused_in_turn(tmp_path, closed)
    assert [FIELDS[number] for number in closed if number not in refused] == []
    for findings in refused.values():
        assert all(each.mend and each.rule for each in findings)


def test_words_are_taken_but_where_they_are_read(tmp_path: Path) -> None:
    """A field that takes any words is one whose words are shown: no others are let in."""
    _, refused = taken_fields(tmp_path)
    rules: dict[str, set[str]] = {}
    for number, findings in refused.items():
        rules.setdefault(FIELDS[number].name, set()).update(each.rule for each in findings)
    assert rules.keys() == READ.keys()
    assert {name: READ[name] for name in rules if READ[name] in rules[name]} == READ


def test_findings_about_it_are_tame(tmp_path: Path) -> None:
    """The box that a preview puts on top of its pages says it all, and holds no markup of it."""
    box = trouble_box(FindingsError(errors_in(tmp_path, list(FIELDS))))
    assert "harm" in box
    assert "<img" not in box
    assert "<script" not in box


def options_taking(text: str) -> set[str]:
    """Return the options of the plugin that a text may stand in."""
    options = dict(PullcordConfig._schema)
    taken = set()
    for name, option in options.items():
        inner = option.option if isinstance(option, Optional) else option
        config = PullcordConfig()
        config.load_dict({name: [text] if isinstance(inner, ListOfItems) else text})
        errors, _ = config.validate()
        taken |= set() if any(key == name for key, _ in errors) else {name}
    return taken


def test_options_of_the_plugin() -> None:
    """Only money's name is printed; the cache is a folder, and what replaces must be there."""
    text = LINE.format(mark="mark000")
    assert options_taking(text) == {"currency", "cache", "replaces"}


@pytest.mark.parametrize("key", ["leads", "up-to", "step"])
def test_a_meter_refuses_words_for_figures(tmp_path: Path, key: str) -> None:
    """With a finding at the settings; its title takes any words."""
    meter = {
        "title": LINE, "leads": "0.1 ohm", "ranges": [{"up-to": "2 kohm", "step": "1 ohm"}]
    }  # fmt: skip
    (tmp_path / "mkdocs.yml").write_text(SETTINGS, encoding="utf-8")
    assert read_meter(meter, tmp_path / "mkdocs.yml").title == LINE
    where = meter if key in meter else meter["ranges"][0]
    where[key] = LINE  # type: ignore[index]
    with pytest.raises(FindingsError):
        read_meter(meter, tmp_path / "mkdocs.yml")
