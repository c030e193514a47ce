"""People, their passwords and what they may do."""

from __future__ import annotations

import json
import stat
from pathlib import Path

import pytest
from argon2 import PasswordHasher, Type, extract_parameters

from anchorwatt.errors import CannotWrite
from anchorwatt.web import accounts
from anchorwatt.web.accounts import MAY, BadPeople, May, People, Role

CHEAP = PasswordHasher(time_cost=1, memory_cost=8, parallelism=1)
DEARER = PasswordHasher(time_cost=2, memory_cost=8, parallelism=1)
GOOD = "seven brass cleats"
OTHER = "two teak ladders"
UNSEEN = ["a\x00b", "a\x1b[2Jb", "a\nb", "mara\u202egpj", "mara\u200f", "mara\u200b", "", "   ", "\ud800"]


@pytest.fixture
def people(tmp_path: Path) -> People:
    found = People(tmp_path / "yard", CHEAP)
    found.add("Mara", GOOD, Role.owner)
    return found


def test_the_right_password_is_taken(people: People) -> None:
    found = people.verify("Mara", GOOD)
    assert found is not None
    assert (found.name, found.role) == ("Mara", Role.owner)


@pytest.mark.parametrize(
    ("name", "password"), [("Mara", OTHER), ("Mara", ""), ("Ivo", GOOD), ("", ""), ("Mara", GOOD + " ")]
)
def test_anything_else_is_not(people: People, name: str, password: str) -> None:
    assert people.verify(name, password) is None


def test_capitals_of_a_name_do_not_matter(people: People) -> None:
    assert people.verify("mARA ", GOOD) is not None


def test_an_accent_typed_in_two_ways_is_one_password(people: People) -> None:
    people.add("Ivo", "caf\u00e9 at the quay", Role.viewer)
    assert people.verify("Ivo", "cafe\u0301 at the quay") is not None


def test_another_process_sees_the_change_at_once(people: People) -> None:
    beside = People(people.path.parent, CHEAP)
    assert beside.person("Ivo") is None
    people.add("Ivo", OTHER, Role.viewer)
    assert beside.person("Ivo") is not None


def test_the_file_is_its_owners_alone(people: People) -> None:
    assert stat.S_IMODE(people.path.stat().st_mode) == 0o600


def test_a_file_opened_to_all_is_closed_at_the_next_change(people: People) -> None:
    people.path.chmod(0o644)
    people.add("Ivo", OTHER, Role.viewer)
    assert stat.S_IMODE(people.path.stat().st_mode) == 0o600


def test_no_password_is_in_the_file(people: People) -> None:
    assert GOOD not in people.path.read_text("utf-8")


def test_no_hash_is_in_what_is_printed_of_a_person(people: People) -> None:
    assert "argon2" not in repr(people.all())


def test_the_cost_by_default_is_that_of_the_library() -> None:
    by_default = PasswordHasher()
    hashed = extract_parameters(accounts._hash_of_nothing(People(Path("nowhere"))._hasher))
    assert (hashed.memory_cost, hashed.time_cost) == (by_default.memory_cost, by_default.time_cost)


def test_the_cost_by_default_is_no_less_than_a_published_one() -> None:
    # RFC 9106, section 4, second recommended option: argon2id, t = 3, p = 4, m = 64 MiB (from memory).
    hashed = extract_parameters(accounts._hash_of_nothing(PasswordHasher()))
    assert hashed.type is Type.ID
    assert hashed.memory_cost >= 64 * 1024
    assert hashed.time_cost >= 3


class Counting(PasswordHasher):
    """Notes the cost of every hash that is verified."""

    def __init__(self) -> None:
        super().__init__(time_cost=1, memory_cost=8, parallelism=1)
        self.costs: list[object] = []

    def verify(self, hash: str | bytes, password: str | bytes) -> bool:  # type: ignore[override]  # noqa: A002
        self.costs.append(extract_parameters(str(hash)))
        return super().verify(hash, password)


def test_an_unknown_name_costs_the_work_of_a_known_one(people: People) -> None:
    counting = Counting()
    asked = People(people.path.parent, counting)
    asked.verify("Mara", OTHER)
    asked.verify("nobody at all", OTHER)
    assert len(counting.costs) == 2
    assert counting.costs[0] == counting.costs[1]


def test_a_hash_of_another_cost_is_made_anew_at_sign_in(people: People) -> None:
    dearer = People(people.path.parent, DEARER)
    assert dearer.verify("Mara", GOOD) is not None
    (mara,) = dearer.all()
    assert not DEARER.check_needs_rehash(mara.password_hash)
    assert dearer.verify("Mara", GOOD) is not None


def test_a_wrong_password_makes_no_hash_anew(people: People) -> None:
    before = people.all()
    assert People(people.path.parent, DEARER).verify("Mara", OTHER) is None
    assert people.all() == before


def test_a_disk_that_refuses_keeps_nobody_out(people: People, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(path: Path, people: object) -> None:
        raise CannotWrite(path, "No space left on device")

    monkeypatch.setattr(accounts, "_write", refuse)
    assert People(people.path.parent, DEARER).verify("Mara", GOOD) is not None


def test_the_old_password_ends_with_the_new(people: People) -> None:
    people.set_password("Mara", OTHER)
    assert people.verify("Mara", GOOD) is None
    assert people.verify("Mara", OTHER) is not None


def test_a_role_can_be_changed(people: People) -> None:
    people.add("Ivo", OTHER, Role.viewer)
    people.set_role("ivo", Role.designer)
    ivo = people.person("Ivo")
    assert ivo is not None
    assert ivo.may(May.change_designs)


def test_who_is_removed_cannot_sign_in(people: People) -> None:
    people.add("Ivo", OTHER, Role.viewer)
    people.remove("Ivo")
    assert people.verify("Ivo", OTHER) is None


def test_the_last_owner_cannot_be_removed(people: People) -> None:
    people.add("Ivo", OTHER, Role.designer)
    with pytest.raises(BadPeople, match="last owner"):
        people.remove("Mara")
    assert people.person("Mara") is not None


def test_the_last_owner_stays_owner(people: People) -> None:
    with pytest.raises(BadPeople, match="last owner"):
        people.set_role("Mara", Role.viewer)


def test_one_of_two_owners_can_be_removed(people: People) -> None:
    people.add("Ivo", OTHER, Role.owner)
    people.remove("Mara")
    assert [one.name for one in people.all()] == ["Ivo"]


def test_the_first_person_is_an_owner(tmp_path: Path) -> None:
    with pytest.raises(BadPeople, match="owner first"):
        People(tmp_path, CHEAP).add("Ivo", OTHER, Role.designer)


@pytest.mark.parametrize("name", ["Mara", "MARA", " mara ", "\uff2dara"])
def test_a_name_is_given_once(people: People, name: str) -> None:
    with pytest.raises(BadPeople, match="has an account"):
        people.add(name, OTHER, Role.viewer)


@pytest.mark.parametrize("name", [*UNSEEN, "x" * 200, "x" * 100_000])
def test_a_name_that_cannot_be_shown_is_refused_in_short_and_seen_words(people: People, name: str) -> None:
    with pytest.raises(BadPeople) as refused:
        people.add(name, OTHER, Role.viewer)
    assert len(str(refused.value)) < 300
    assert str(refused.value).isprintable()


@pytest.mark.parametrize("name", ["<b>Ivo</b>", 'O\'Neil & "Sons"', "زهرا", "Łukasz Żak", "🐟"])
def test_any_name_that_can_be_shown_is_kept_as_it_is(people: People, name: str) -> None:
    people.add(name, OTHER, Role.viewer)
    found = People(people.path.parent, CHEAP).person(name)
    assert found is not None
    assert found.name == name


@pytest.mark.parametrize("name", [*UNSEEN, "x" * 100_000])
def test_a_hostile_name_at_sign_in_is_only_unknown(people: People, name: str) -> None:
    assert people.verify(name, GOOD) is None


@pytest.mark.parametrize("password", ["\x00" * 20, "\ud800" * 20, "x" * 100_000, "\u202e"])
def test_a_hostile_password_is_only_wrong(people: People, password: str) -> None:
    assert people.verify("Mara", password) is None


@pytest.mark.parametrize(
    ("password", "told"),
    [
        ("eleven char", "11 characters"),
        ("", "0 characters"),
        ("x" * 1001, "at most 1000"),
        ("aaaaaaaaaaaa", "over and over"),
        ("ivo of the quay", "not the name"),
        ("IVO OF THE QUAY", "not the name"),
        ("ivo of the quay ivo of the quay", "not the name"),
    ],
)
def test_a_weak_password_is_refused_in_words(people: People, password: str, told: str) -> None:
    with pytest.raises(BadPeople, match=told):
        people.add("Ivo of the Quay", password, Role.viewer)
    assert people.person("Ivo of the Quay") is None


def test_the_rule_names_its_length() -> None:
    assert "12 characters or more" in accounts.PASSWORD_RULE


def test_twelve_characters_are_enough(people: People) -> None:
    people.add("Ivo", "twelve chars", Role.viewer)
    assert people.verify("Ivo", "twelve chars") is not None


@pytest.mark.parametrize(
    ("role", "allowed"),
    [
        (Role.owner, set(May)),
        (Role.designer, {May.read, May.download, May.change_designs}),
        (Role.technician, {May.read, May.download}),
        (Role.viewer, {May.read}),
    ],
)
def test_a_role_allows_what_it_is_for(role: Role, allowed: set[May]) -> None:
    assert MAY[role] == allowed


def test_nothing_can_be_added_to_what_a_role_may() -> None:
    with pytest.raises(TypeError):
        MAY[Role.viewer] = frozenset(May)  # type: ignore[index]


def test_an_unknown_role_lists_the_roles() -> None:
    with pytest.raises(BadPeople, match="owner, designer, technician, viewer"):
        accounts.role_named("captain")


def test_no_file_is_nobody(tmp_path: Path) -> None:
    assert People(tmp_path, CHEAP).all() == ()


BROKEN = [
    "",
    "{",
    "[]",
    "[" * 100_000,
    '{"version": 1}',
    '{"version": 2, "people": []}',
    '{"version": 1, "people": {}}',
    '{"version": 1, "people": ["Mara"]}',
    '{"version": 1, "people": [{"name": "Mara", "role": "owner"}]}',
    '{"version": 1, "people": [{"name": "Mara", "role": "owner", "password": "plain"}]}',
    '{"version": 1, "people": [{"name": 1, "role": "owner", "password": "plain"}]}',
]


@pytest.mark.parametrize("content", BROKEN, ids=range(len(BROKEN)))
def test_a_broken_file_is_named_and_kept(people: People, content: str) -> None:
    people.path.write_text(content, "utf-8")
    with pytest.raises(BadPeople) as refused:
        people.add("Ivo", OTHER, Role.viewer)
    assert str(people.path) in str(refused.value)
    assert people.path.read_text("utf-8") == content


@pytest.mark.parametrize(("key", "value"), [("role", "captain"), ("name", "a\x07b"), ("password", "$2b$12$abc")])
def test_a_person_edited_wrongly_is_named_by_number(people: People, key: str, value: str) -> None:
    content = json.loads(people.path.read_text("utf-8"))
    content["people"][0][key] = value
    people.path.write_text(json.dumps(content), "utf-8")
    with pytest.raises(BadPeople, match=r"people\.json: person 1: found"):
        people.all()


def test_a_name_twice_in_the_file_is_told(people: People) -> None:
    content = json.loads(people.path.read_text("utf-8"))
    content["people"] *= 2
    people.path.write_text(json.dumps(content), "utf-8")
    with pytest.raises(BadPeople, match="twice"):
        people.all()


def test_a_write_that_breaks_off_leaves_the_file_and_no_litter(people: People, monkeypatch: pytest.MonkeyPatch) -> None:
    before, names = people.path.read_bytes(), sorted(people.path.parent.iterdir())

    def full(descriptor: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("os.fsync", full)
    with pytest.raises(CannotWrite, match="No space left"):
        people.add("Ivo", OTHER, Role.viewer)
    assert people.path.read_bytes() == before
    assert sorted(people.path.parent.iterdir()) == names


def test_two_at_once_lose_nobody(people: People) -> None:
    from concurrent.futures import ThreadPoolExecutor

    with ThreadPoolExecutor(4) as pool:
        names = [f"worker {n}" for n in range(12)]
        list(pool.map(lambda name: People(people.path.parent, CHEAP).add(name, GOOD, Role.viewer), names))
    assert {one.name for one in people.all()} == {"Mara", *names}
