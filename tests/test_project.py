"""What one build starts from: the files of its folders, read and checked together."""

from __future__ import annotations

import hashlib
from pathlib import Path

import pytest

from pullcord.errors import PullcordError
from pullcord.project import Project, load_project
from pullcord.rules.example import example
from pullcord.source.places import shipped_procedures

PUMP = "machine: old-pump\ntitle: Old pump\nkind: pump\n"


def write(folder: Path, **texts: str) -> Path:
    """Write files into a folder; a keyword `no_prime` is `no-prime.yaml`."""
    folder.mkdir(parents=True, exist_ok=True)
    for name, text in texts.items():
        (folder / f"{name.replace('_', '-')}.yaml").write_text(text, encoding="utf-8")
    return folder


def said(project: Project) -> list[tuple[str, str]]:
    """Return the file name and rule of every finding."""
    return [(Path(each.file).name, each.rule) for each in project.findings]


def hands_over_to(name: str) -> str:
    """Return the start of a procedure that hands over to another."""
    return (
        "steps:\n  casing:\n    title: Casing\n    do: Look.\n    ask: What do you see?\n"
        f"    answers: {{a: cause air-leak, b: cause dry-casing, c: procedure {name}}}\n"
    )


def test_procedures_and_machine_sheets_are_told_apart_by_their_first_key(tmp_path: Path) -> None:
    """They may lie in one folder or in several."""
    text = example("title: Pump will not prime\n")
    write(tmp_path, no_prime=text, old_pump=PUMP)
    project = load_project([tmp_path])
    assert project.findings == ()
    assert list(project.files) == list(project.library.procedures) == ["no-prime"]
    assert list(project.machines) == list(project.library.machines) == ["old-pump"]
    file = project.files["no-prime"]
    assert file.procedure is project.library.procedures["no-prime"]
    assert file.path == tmp_path / "no-prime.yaml"
    assert file.digest == hashlib.sha256(text.encode()).hexdigest()[:12]


def test_a_broken_file_leaves_the_others_standing(tmp_path: Path) -> None:
    """It is not in the library, and a hand-over to it is not held against its neighbour."""
    write(tmp_path, no_flow="procedure: no-flow\n", no_prime=example(hands_over_to("no-flow")))
    project = load_project([tmp_path])
    assert list(project.files) == ["no-prime"]
    assert {name for name, _ in said(project)} == {"no-flow.yaml"}


def test_a_hand_over_crosses_folders(tmp_path: Path) -> None:
    """A shop's procedure may send its reader to a shipped one."""
    shipped = write(tmp_path / "shipped", no_flow=example("procedure: no-flow\n"))
    own = write(tmp_path / "own", no_prime=example(hands_over_to("no-flow")))
    assert load_project([shipped, own]).findings == ()
    assert said(load_project([own])) == [("no-prime.yaml", "unknown-procedure")]


def test_one_name_in_two_folders_is_a_finding(tmp_path: Path) -> None:
    """Neither replaces the other without a word; the first one stands meanwhile."""
    first = write(tmp_path / "a", no_prime=example("title: First\n"))
    second = write(tmp_path / "b", no_prime=example("title: Second\n"))
    project = load_project([first, second])
    assert [(each.file, each.rule) for each in project.findings] == [
        (f"{second}/no-prime.yaml", "same-name-twice")
    ]
    assert project.files["no-prime"].procedure.title == "First"


def test_a_later_folder_replaces_what_it_is_allowed_to(tmp_path: Path) -> None:
    """The earlier one is not read at all then, not even for findings."""
    first = write(tmp_path / "a", no_prime="broken: [")
    second = write(tmp_path / "b", no_prime=example("title: Second\n"))
    project = load_project([first, second], replaces=["no-prime"])
    assert project.findings == ()
    assert project.files["no-prime"].procedure.title == "Second"


def test_replacing_what_is_not_there_twice_is_an_error(tmp_path: Path) -> None:
    """A slip in the settings is not passed over."""
    folder = write(tmp_path, no_prime=example("title: First\n"))
    with pytest.raises(PullcordError, match="`replaces` names `no-prime`"):
        load_project([folder], replaces=["no-prime"])


def test_a_folder_named_twice_is_read_once(tmp_path: Path) -> None:
    """Also when it lies within another one."""
    inner = write(tmp_path / "inner", no_prime=example("title: First\n"))
    assert load_project([tmp_path, inner, inner]).findings == ()


def test_a_missing_folder_is_an_error(tmp_path: Path) -> None:
    """It says which."""
    with pytest.raises(PullcordError, match=r"nowhere cannot be read: No such file"):
        load_project([tmp_path / "nowhere"])


def test_a_link_out_of_the_folder_is_a_finding(tmp_path: Path) -> None:
    """It is not followed, and its place says why it is missing."""
    write(tmp_path, secret=example("procedure: secret\n"))
    folder = write(tmp_path / "in")
    (folder / "secret.yaml").symlink_to(tmp_path / "secret.yaml")
    assert said(load_project([folder])) == [("secret.yaml", "unreadable-file")]


def test_findings_name_files_as_seen_from_the_base(tmp_path: Path) -> None:
    """What lies outside of it keeps its whole path."""
    write(tmp_path / "in" / "procedures", a="x")
    write(tmp_path / "out", b="x")
    folders = [tmp_path / "in" / "procedures", tmp_path / "out"]
    project = load_project(folders, base=tmp_path / "in")
    assert [each.file for each in project.findings] == [
        (tmp_path / "out/b.yaml").as_posix(),
        "procedures/a.yaml",
    ]


def test_the_order_of_files_does_not_matter(tmp_path: Path) -> None:
    """Same files, same project, whatever the folders' order."""
    first = write(tmp_path / "a", no_prime=example("titel: x\n"))
    second = write(tmp_path / "b", no_flow=example("procedure: no-flow\nodds: 3\n"))
    assert load_project([first, second]).findings == load_project([second, first]).findings


def test_the_shipped_procedures_can_be_read() -> None:
    """Each file is there, and every finding is about one of them."""
    project = load_project([shipped_procedures()])
    names = {path.stem for path in shipped_procedures().glob("*.yaml")}
    broken = {Path(each.file).stem for each in project.findings}
    assert names
    assert names == set(project.files) | (broken & names)
    assert project.library.stages


def test_the_revision_goes_by_what_is_shared(tmp_path: Path) -> None:
    """A page made from a changed shared step is not of the revision printed last month."""
    shared = "shared: bench\ncauses:\n  leak: {{title: Hose leaks, remedy: {}}}\n"
    causes = "causes:\n  dry-casing: {as: leak}\n  air-leak: {as: leak}\n"
    folders = [
        write(tmp_path / name, bench=shared.format(remedy), no_prime=example(causes))
        for name, remedy in {"a": "Fit a hose.", "b": "Fit two.", "c": "Fit a hose."}.items()
    ]
    first, second, third = (load_project([f]).files["no-prime"] for f in folders)
    assert first.procedure.causes["air-leak"].remedy == "Fit a hose."
    assert first.digest == third.digest != second.digest
