"""The binder holds everything, and its contents lead to the right pages."""

from __future__ import annotations

import pytest

from pullcord.printing.binder import binder_parts
from pullcord.printing.press import UnknownNameError
from tests.printing.sheets import press, printed, squeezed


def test_contents_name_the_pages_things_are_on() -> None:
    """Each entry stands with the number of the page whose head bears its title."""
    binder = printed("binder", "leaks-fuel", "quince")
    contents = squeezed(binder.sheets[0].text).replace(".", "")
    parts = binder_parts(press(), "leaks-fuel", "quince")[1:]
    assert len(parts) >= 4
    for part in parts:
        title = squeezed(part["title"])
        page = next(
            number
            for number, sheet in enumerate(binder.sheets, start=1)
            if number > 1 and title in squeezed(sheet.text)
        )
        after = contents.split(title, 1)[1][:80]
        assert str(page) in after


def test_pages_and_sheets_are_both_counted() -> None:
    """Each page says its number in the binder, and which sheet of its part it is."""
    binder = printed("binder", "leaks-fuel", "quince")
    for number, sheet in enumerate(binder.sheets, start=1):
        assert squeezed(f"· page {number}") in squeezed(sheet.text)
        assert "sheet" in sheet.text


def test_a_binder_of_everything_has_every_part() -> None:
    """All procedures, and for each machine its pin charts and the record sheets that fit it."""
    parts = binder_parts(press())
    kinds = [part["kind"] for part in parts]
    project = press().project
    assert kinds[0] == "contents"
    assert kinds.count("flowchart") == kinds.count("steps") == len(project.files)
    assert kinds.count("leaving") == len(project.files)
    assert kinds.count("pins") == len(project.machines)
    titles = {read.machine.title for read in project.machines.values()}
    # What fits none of the machines stands once, for any.
    assert {part["machine"] for part in parts if part["kind"] == "record"} == {"", *titles}


def test_a_machines_binder_leaves_out_what_does_not_fit() -> None:
    """Limits are those of the machine on every sheet, and no procedure for others is in."""
    project = press().project
    parts = binder_parts(press(), machine="quince")
    title = project.machines["quince"].machine.title
    assert {part["machine"] for part in parts} == {title}


@pytest.mark.parametrize(("name", "machine"), [("no-such", ""), ("", "no-such")])
def test_unknown_names_are_told(name: str, machine: str) -> None:
    """A slip in a name is not an empty binder."""
    with pytest.raises(UnknownNameError, match="there is no"):
        binder_parts(press(), name, machine)
