"""The people command: who may use a workbench that others can reach."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any

import typer

from anchorwatt.cli.console import note
from anchorwatt.cli.options import PeopleAction
from anchorwatt.papers.page import Content, Paragraph, section, table
from anchorwatt.web import accounts

if TYPE_CHECKING:
    from collections.abc import Sequence

    from anchorwatt.web.accounts import People, Person

Plain = dict[str, Any]

_SAID = {
    PeopleAction.add: "{name} may sign in, as {role}.",
    PeopleAction.password: "{name} has a new password; who was signed in with the old one no longer is.",
    PeopleAction.role: "{name} is {role} now.",
    PeopleAction.remove: "{name} has no account any more.",
}


def people_of(designs: Path) -> People:
    """The people of a folder of designs.

    Raises
    ------
    BadPeople
        There is no such folder.
    """
    if not designs.is_dir():
        raise accounts.BadPeople(f"found {designs}, which is no folder; allowed: the folder of your designs")
    return accounts.People(accounts.beside(designs))


def change(people: People, action: PeopleAction, name: str, role: str | None) -> Person:
    """Do what was asked; whoever is concerned is returned, as before when removed.

    Raises
    ------
    BadPeople, CannotWrite
        It cannot be done; nothing was changed.
    """
    if action is PeopleAction.add:
        name = accounts.clean_name(name)
        given = accounts.role_named(role or accounts.Role.viewer)
        people.may_add(name, given)
        return people.add(name, _password(name), given)
    person = people.known(name)
    if action is PeopleAction.password:
        return people.set_password(person.name, _password(person.name))
    if action is PeopleAction.role:
        return people.set_role(person.name, accounts.role_named(role or ""))
    people.remove(person.name)
    return person


def said(action: PeopleAction, person: Person) -> Content:
    """What was done, in words."""
    return Paragraph(_SAID[action].format(name=person.name, role=person.role))


def screen(people: Sequence[Person]) -> Content:
    """Everybody, with what they may do."""
    if not people:
        return Paragraph(
            "Nobody has an account yet. Add an owner first: anchorwatt people add FOLDER NAME --role owner"
        )
    rows = [(one.name, str(one.role), "; ".join(_may(one))) for one in people]
    return section("People", table(("name", "role", "may"), ("<", "<", "<"), rows))


def plain(people: Sequence[Person]) -> Plain:
    """Everybody, as plain data; no password hash is in it."""
    return {"people": [{"name": one.name, "role": str(one.role), "may": _may(one)} for one in people]}


def _may(person: Person) -> list[str]:
    return [str(what) for what in accounts.May if person.may(what)]


def _password(name: str) -> str:
    """Ask for a password, twice and unseen, on a terminal; else take the first line of what comes in."""
    if not sys.stdin.isatty():
        found = sys.stdin.readline().rstrip("\r\n")
        accounts.check_password(name, found)
        return found
    note(accounts.PASSWORD_RULE)
    while True:
        found = str(typer.prompt("Password", hide_input=True, err=True))
        try:
            accounts.check_password(name, found)
        except accounts.BadPeople as problem:
            note(str(problem))
            continue
        if typer.prompt("The same again", hide_input=True, err=True) == found:
            return found
        note("The two are not the same; please begin again.")
