"""The finder without scripts: every sign, by sense, with links to its procedures."""

from __future__ import annotations

from functools import cache

from pullcord.analysis.finder import Sign
from pullcord.pages.finder_page import sign_ids
from pullcord.pages.page import Page
from tests.pages.make import NO_SPARK, WONT_IDLE, pages_of, procedure, tree_of

SIGNS = "signs: {seen: [engine turns, White Smoke], smelt: petrol <b>smell</b>}\nabout:"
OTHER = "signs: {seen: [white smoke], heard: [it hunts]}\nabout:"


@cache
def pages() -> dict[str, Page]:
    """Make the pages of the two examples with signs."""
    return pages_of(
        procedure(NO_SPARK.replace("about:", SIGNS, 1)),
        procedure(WONT_IDLE.replace("about:", OTHER, 1)),
    )


FINDER = tree_of(pages()["finder.md"])


def test_signs_stand_by_sense_with_all_they_lead_to() -> None:
    """A sense without signs has no section; what is dangerous leads the order."""
    told = {
        section.attrs["id"]: {
            line.tags("b")[0].text: [link.attrs["href"] for link in line.tags("a")]
            for line in section.tags("li")
        }
        for section in FINDER.all("pc-sense")
    }
    no_spark, wont_idle = "procedures/no-spark.html", "procedures/wont-idle.html"
    assert told == {
        "by-seen": {"white smoke": [wont_idle, no_spark], "engine turns": [no_spark]},
        "by-heard": {"it hunts": [wont_idle]},
        "by-smelt": {"petrol <b>smell</b>": [no_spark]},
    }
    assert list(told["by-seen"]) == ["white smoke", "engine turns"]


def test_a_sign_carries_what_a_script_reckons_with() -> None:
    """Its weight and its procedures, by the same names as the cards."""
    line = FINDER.by_id("seen-white-smoke")
    assert line.attrs["data-weight"] == "1"
    assert FINDER.by_id("heard-it-hunts").attrs["data-weight"] == "2"
    names = line.attrs["data-names"].split()
    assert names == [card.attrs["data-name"] for card in FINDER.all("pc-find")]


def test_the_cards_say_what_is_dangerous() -> None:
    """In words, and above the others; they wait in a template until a script shows them."""
    (template,) = FINDER.tags("template")
    first, second = template.all("pc-find")
    assert "Dangerous" in first.text
    assert "It dies when you let go." in first.text
    assert "pc-find--urgent" in first.classes
    assert "pc-find--urgent" not in second.classes


def test_every_sign_has_an_address_of_its_own() -> None:
    """Also where two are told apart by more than letters and digits."""
    signs = [Sign("seen", words, ("a",), 1) for words in ("it runs", "it runs!", "?", "äö")]
    assert list(sign_ids(signs)) == ["seen-it-runs", "seen-it-runs-2", "seen", "seen-2"]


def test_a_procedures_page_says_what_it_is_known_by_and_taken_for() -> None:
    """In the words of its file, and with the signs it shares."""
    page = tree_of(pages()["procedures/no-spark.md"])
    (summary,) = page.all("pc-summary")
    assert "Known by seen: engine turns · White Smoke smelt: petrol <b>smell</b>" in summary.text
    (alike,) = page.all("pc-alike")
    (link,) = alike.tags("a")
    assert link.attrs["href"] == "wont-idle.html"
    assert link.text == "Will not idle White Smoke"


def test_a_procedure_like_no_other_says_nothing_of_others() -> None:
    """Nor does one without signs."""
    alone = pages_of(procedure(WONT_IDLE.replace("about:", OTHER, 1)))
    assert tree_of(alone["procedures/wont-idle.md"]).all("pc-alike") == []
    without = tree_of(pages_of(procedure(WONT_IDLE))["procedures/wont-idle.md"])
    assert "Known by" not in without.all("pc-summary")[0].text
