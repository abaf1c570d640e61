"""All that is known: the shipped facts are good, bodies follow from mounts, and everything can be called by name."""

from pathlib import Path

from engine.base.place import Place
from engine.facts.basis import Basis
from engine.facts.catalogue import Catalogue, load_catalogue
from engine.facts.derived import mount_words
from engine.facts.guidance import Term
from engine.facts.overlay import Loaded
from engine.facts.records import Body
from engine.facts.sections import with_article
from engine.facts.tables import Tables


def catalogue(base: Tables) -> Catalogue:
    return Catalogue.of(Loaded(base))


def test_shipped_facts_are_without_problems() -> None:
    _, problems = load_catalogue(cached=False)
    assert [str(problem) for problem in problems] == []


def test_shipped_body_exists_for_each_format_of_each_mount() -> None:
    known, _ = load_catalogue(cached=False)
    bodies = {(body.mount, body.format) for body in known.bodies.values() if body.generic}
    assert bodies >= {(mount.id, of) for mount in known.mounts.values() for of in mount.formats}


def test_generic_body_is_named_as_people_say_it(base: Tables) -> None:
    body = catalogue(base).bodies["generic-e-mount-aps-c-1.5"]
    assert body == Body(
        "generic-e-mount-aps-c-1.5",
        "an E-mount APS-C 1.5x body",
        "e-mount",
        "aps-c-1.5",
        Basis("two-sources", ("S1",)),
        generic=True,
        aliases=("E-mount APS-C body",),
    )
    assert body.place == Place("base.yaml", 28, 3)


def test_everything_can_be_called_by_id_name_and_alias(base: Tables) -> None:
    names = list(catalogue(base).names())
    assert ("E", "mount", "e-mount") in names
    assert ("E-mount (E/FE)", "mount", "e-mount") in names
    assert ("M42x1", "thread", "m42x1") in names
    assert ("APS-C", "format", "aps-c-1.5") in names
    assert ("M42 to E ring", "adapter", "m42-e") in names
    assert ("E-mount APS-C 1.5x body", "body", "generic-e-mount-aps-c-1.5") in names
    assert names.count(("sun", "advice", "sun")) == 1


def test_catalogue_made_by_hand_is_as_good_as_a_loaded_one() -> None:
    known = Catalogue(terms={"seat": Term("seat", ("seat", "rest"), "where it rests", Basis("memory", ("S1",)))})
    assert list(known.names()) == [("seat", "term", "seat"), ("rest", "term", "seat")]
    assert known.mounts.get("c") is None


def test_gear_file_is_found_in_the_catalogue(tmp_path: Path) -> None:
    gear = tmp_path / "gear.yaml"
    gear.write_text("lenses: {tern: {mount: c, name: Tern}}")
    known, problems = load_catalogue((), gear, cached=False)
    assert [problem for problem in problems if problem.place.file == str(gear)] == []
    assert known.gear_ids == {"tern"}
    assert ("Tern", "lens", "tern") in list(known.names())


def test_article_goes_by_the_sound() -> None:
    words = [
        "E-mount",
        "M42",
        "LTM",
        "Exakta",
        "C-mount",
        "PL-mount",
        "Universal bayonet",
        "Micro Four Thirds",
        "1-mount",
    ]
    assert [with_article(word).split()[0] for word in words] == ["an", "an", "an", "an", "a", "a", "a", "a", "a"]


def test_designation_is_shortened_to_what_is_said_before_body() -> None:
    said = {"C": "C-mount", "E-mount (E/FE)": "E-mount", "PL, Super 16 centred": "PL-mount", "Exakta": "Exakta"}
    assert {designation: mount_words(designation) for designation in said} == said
