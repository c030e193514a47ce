"""The people command."""

from __future__ import annotations

import json
import stat
from collections.abc import Iterator
from pathlib import Path

import pytest
from argon2 import PasswordHasher
from typer.testing import CliRunner, Result

from anchorwatt.cli import app, people
from anchorwatt.cli.options import PeopleAction
from anchorwatt.web import accounts
from anchorwatt.web.accounts import BadPeople, People, Role

GOOD = "seven brass cleats"
OTHER = "two teak ladders"


@pytest.fixture(autouse=True)
def _cheap(monkeypatch: pytest.MonkeyPatch) -> None:
    """Hash at little cost, which no option of the program can do."""
    monkeypatch.setattr(accounts, "PasswordHasher", lambda: PasswordHasher(time_cost=1, memory_cost=8, parallelism=1))


@pytest.fixture
def designs(tmp_path: Path) -> Path:
    assert run("add", tmp_path, "Mara", "--role", "owner", typed=GOOD).exit_code == 0
    return tmp_path


def run(*arguments: object, typed: str = "") -> Result:
    words = ["people", *(str(one) for one in arguments)]
    return CliRunner().invoke(app, words, input=f"{typed}\n", env={"COLUMNS": "80"})


def of(designs: Path) -> People:
    return People(accounts.beside(designs))


def test_who_is_added_can_sign_in(designs: Path) -> None:
    found = of(designs).verify("Mara", GOOD)
    assert found is not None
    assert found.role is Role.owner


def test_the_file_is_beside_the_designs_and_its_owners_alone(designs: Path) -> None:
    path = designs / ".anchorwatt" / "people.json"
    assert stat.S_IMODE(path.stat().st_mode) == 0o600


def test_who_is_added_without_a_role_is_a_viewer(designs: Path) -> None:
    run("add", designs, "Ivo", typed=OTHER)
    assert [one.role for one in of(designs).all()] == [Role.owner, Role.viewer]


def test_a_password_can_be_set_anew(designs: Path) -> None:
    assert run("password", designs, "mara", typed=OTHER).exit_code == 0
    assert of(designs).verify("Mara", OTHER) is not None


def test_a_role_can_be_changed(designs: Path) -> None:
    run("add", designs, "Ivo", typed=OTHER)
    assert "Ivo is technician" in run("role", designs, "Ivo", "--role", "technician").stdout
    assert [one.role for one in of(designs).all()] == [Role.owner, Role.technician]


def test_who_is_removed_is_gone(designs: Path) -> None:
    run("add", designs, "Ivo", typed=OTHER)
    assert run("remove", designs, "Ivo").exit_code == 0
    assert of(designs).person("Ivo") is None


def test_the_list_names_people_and_roles(designs: Path) -> None:
    shown = run("list", designs).stdout
    assert "Mara" in shown
    assert "owner" in shown


def test_the_list_of_nobody_says_how_to_begin(tmp_path: Path) -> None:
    assert "--role owner" in run("list", tmp_path).stdout


def test_looking_makes_no_folder(tmp_path: Path) -> None:
    run("list", tmp_path)
    assert list(tmp_path.iterdir()) == []


def test_no_hash_leaves_the_file(designs: Path) -> None:
    for arguments in (("list", designs), ("list", designs, "--json"), ("role", designs, "Mara", "--role", "owner")):
        assert "argon2" not in run(*arguments).output


def test_json_holds_names_roles_and_what_they_may(designs: Path) -> None:
    (mara,) = json.loads(run("list", designs, "--json").stdout)["people"]
    assert (mara["name"], mara["role"]) == ("Mara", "owner")
    assert "change designs" in mara["may"]


def test_no_password_is_printed(designs: Path) -> None:
    assert OTHER not in run("add", designs, "Ivo", typed=OTHER).output


@pytest.mark.parametrize(
    ("arguments", "typed", "told"),
    [
        (("add", "Ivo"), "too short", "12 or more"),
        (("add", "Ivo"), "", "12 or more"),
        (("add", "MARA"), OTHER, "has an account"),
        (("add", "Ivo", "--role", "captain"), OTHER, "owner, designer, technician, viewer"),
        (("add", "a\x1b[2Jb"), OTHER, "that can be seen"),
        (("add", "mara\u202egpj"), OTHER, "that can be seen"),
        (("add", "x" * 200), OTHER, "1 to 60 characters"),
        (("add", "the quay at noon"), "The Quay at Noon", "not the name"),
        (("password", "Ivo"), OTHER, "found no “Ivo”"),
        (("role", "Ivo", "--role", "viewer"), "", "found no “Ivo”"),
        (("remove", "Ivo"), "", "found no “Ivo”"),
        (("remove", "Mara"), "", "last owner"),
        (("role", "Mara", "--role", "viewer"), "", "last owner"),
    ],
)
def test_what_cannot_be_done_is_said_and_changes_nothing(
    designs: Path, arguments: tuple[str, ...], typed: str, told: str
) -> None:
    before = of(designs).path.read_bytes()
    action, *rest = arguments
    found = run(action, designs, *rest, typed=typed)
    assert found.exit_code == 2
    assert told in found.stderr
    assert "\x1b" not in found.output
    assert of(designs).path.read_bytes() == before


@pytest.mark.parametrize(
    "arguments",
    [("add",), ("add", " "), ("role", "Mara"), ("remove",), ("remove", "Mara", "--role", "viewer"), ("fly", "Mara")],
)
def test_a_command_that_lacks_something_is_refused(designs: Path, arguments: tuple[str, ...]) -> None:
    action, *rest = arguments
    assert run(action, designs, *rest).exit_code == 2


def test_a_folder_that_is_not_there_is_not_made(tmp_path: Path) -> None:
    found = run("add", tmp_path / "desings", "Mara", "--role", "owner", typed=GOOD)
    assert found.exit_code == 2
    assert "desings" in found.stderr
    assert list(tmp_path.iterdir()) == []


def test_a_broken_file_is_named_and_kept(designs: Path) -> None:
    of(designs).path.write_text("{", "utf-8")
    found = run("add", designs, "Ivo", typed=OTHER)
    assert found.exit_code == 2
    assert "people.json" in found.stderr
    assert of(designs).path.read_text("utf-8") == "{"


class Terminal:
    """Somebody at a terminal who types these lines; notes whether they were to be seen."""

    def __init__(self, *lines: str) -> None:
        self.lines: Iterator[str] = iter(lines)
        self.hidden: list[bool] = []

    def isatty(self) -> bool:
        return True

    def prompt(self, words: str, hide_input: bool, err: bool) -> str:
        self.hidden.append(hide_input)
        return next(self.lines)


@pytest.mark.parametrize(
    ("lines", "asked"),
    [
        ((GOOD, GOOD), 2),
        ((GOOD, OTHER, OTHER, OTHER), 4),
        (("short", GOOD, GOOD), 3),
    ],
)
def test_a_terminal_is_asked_unseen_until_two_agree(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, lines: tuple[str, ...], asked: int
) -> None:
    terminal = Terminal(*lines)
    monkeypatch.setattr("sys.stdin", terminal)
    monkeypatch.setattr("typer.prompt", terminal.prompt)
    people.change(of(tmp_path), PeopleAction.add, "Mara", "owner")
    assert terminal.hidden == [True] * asked
    assert of(tmp_path).verify("Mara", lines[-1]) is not None


def test_nobody_types_a_password_in_vain(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    terminal = Terminal()
    monkeypatch.setattr("sys.stdin", terminal)
    monkeypatch.setattr("typer.prompt", terminal.prompt)
    with pytest.raises(BadPeople, match="owner first"):
        people.change(of(tmp_path), PeopleAction.add, "Mara", "viewer")
