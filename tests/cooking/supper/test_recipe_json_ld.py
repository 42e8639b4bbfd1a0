"""Files in the schema.org/Recipe vocabulary are read in every form that it allows; others are refused in one sentence.

The examples are of our own making, after the definitions of Recipe, HowToStep and HowToSection at schema.org and of
durations in ISO 8601-1.
"""

import json
from pathlib import Path
from typing import Any

import isodate
import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.cooking.supper.recipe.json_ld import (
    DEEPEST,
    LARGEST_FILE,
    MOST_STEPS,
    minutes_of,
    read_recipe_file,
    read_recipes,
)
from cookstove_gui.errors import InputProblem

WORDS = ("Heat the oven to 350°F.", "Bake for 40 minutes.")


def recipe(instructions: Any, **others: Any) -> dict[str, Any]:
    return {"@context": "https://schema.org", "@type": "Recipe", "name": "Plain cake", **others} | {
        "recipeInstructions": instructions
    }


def step(text: str) -> dict[str, str]:
    return {"@type": "HowToStep", "text": text}


FORMS = {
    "one text": recipe("\n".join(WORDS)),
    "text with tags": recipe(f"<ol><li>{WORDS[0]}</li><li>{WORDS[1]}</li></ol>"),
    "list of texts": recipe(list(WORDS)),
    "list of steps": recipe([step(one) for one in WORDS]),
    "sections": recipe(
        [
            {"@type": "HowToSection", "name": "Oven", "itemListElement": [step(WORDS[0])]},
            {"@type": "HowToSection", "name": "Cake", "itemListElement": [step(WORDS[1])]},
        ]
    ),
    "item list": recipe({"@type": "ItemList", "itemListElement": [step(one) for one in WORDS]}),
    "list items": recipe([{"@type": "ListItem", "position": n, "item": step(one)} for n, one in enumerate(WORDS)]),
    "in a graph": {"@graph": [{"@type": "WebPage", "name": "Page"}, recipe(list(WORDS))]},
    "in a list": [recipe(list(WORDS))],
    "main entity": {"@type": "WebPage", "mainEntity": recipe(list(WORDS))},
    "of two types": recipe(list(WORDS)) | {"@type": ["Recipe", "NewsArticle"]},
    "type as an address": recipe(list(WORDS)) | {"@type": "https://schema.org/Recipe"},
}


@pytest.mark.parametrize("document", FORMS.values(), ids=list(FORMS))
def test_each_form_of_instructions_gives_the_same_steps(document: Any) -> None:
    (found,) = read_recipes(json.dumps(document), "cake.json")
    assert (found.name, found.steps) == ("Plain cake", WORDS)


def test_times_and_yield_are_read() -> None:
    document = recipe(
        list(WORDS), prepTime="PT20M", cookTime="PT1H10M", totalTime="PT1H30M", recipeYield=["2", "2 cakes"]
    )
    (found,) = read_recipes(json.dumps(document), "cake.json")
    assert (found.hands_min, found.heat_min, found.total_min, found.makes) == (20, 70, 90, "2")


@pytest.mark.parametrize(
    "duration", ["PT20M", "PT1H", "PT1H30M", "P1DT2H", "PT90S", "P2W", "PT0.5H", "P1D", "PT36H", "PT1H0M30S"]
)
def test_durations_are_read_as_a_reference_library_reads_them(duration: str) -> None:
    expected = isodate.parse_duration(duration).total_seconds() / 60.0
    assert minutes_of(duration) == pytest.approx(expected)


@pytest.mark.parametrize("text", ["", "20 minutes", "P", "PT", "PT0M", "PTM", "T20M", "PT20", "-PT5M"])
def test_what_is_no_duration_gives_no_minutes(text: str) -> None:
    assert minutes_of(text) is None


def test_recipes_of_a_saved_page_are_read_and_a_broken_script_beside_them_is_passed_over() -> None:
    good = json.dumps(recipe(list(WORDS)))
    page = (
        f'<html><script type="application/ld+json">{{broken</script><script type="application/ld+json">{good}</script>'
    )
    (found,) = read_recipes(page, "page.html")
    assert found.steps == WORDS


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "not JSON"),
        ("{", "not JSON"),
        ("[]", "no schema.org/Recipe"),
        ('{"@type": "Person", "name": "Cook"}', "no schema.org/Recipe"),
        (json.dumps(recipe([])), "no recipeInstructions"),
        (json.dumps(recipe(None)), "no recipeInstructions"),
        (json.dumps(recipe(["Stir."] * (MOST_STEPS + 1))), "more than"),
        ("[" * (DEEPEST + 1) + "]" * (DEEPEST + 1), "layers"),
        ("[" * 100_000, "layers"),
        ("<html><p>A recipe</p></html>", "no schema.org/Recipe"),
    ],
)
def test_what_cannot_be_used_is_refused_in_one_sentence(text: str, says: str) -> None:
    with pytest.raises(InputProblem) as caught:
        read_recipes(text, "file.json")
    assert says in caught.value.sentence
    assert "file.json" in caught.value.sentence


def test_files_that_are_absent_too_large_or_no_text_are_refused(tmp_path: Path) -> None:
    large, bytes_ = tmp_path / "large.json", tmp_path / "bytes.json"
    large.write_bytes(b" " * (LARGEST_FILE + 1))
    bytes_.write_bytes(b"\xff\xfe\x00{")
    for path in (tmp_path / "none.json", large, bytes_):
        with pytest.raises(InputProblem):
            read_recipe_file(path)


def test_a_file_with_a_byte_order_mark_is_read(tmp_path: Path) -> None:
    path = tmp_path / "cake.json"
    path.write_text(json.dumps(recipe(list(WORDS))), "utf-8-sig")
    assert read_recipe_file(path)[0].name == "Plain cake"


_JSON = st.recursive(
    st.none() | st.booleans() | st.floats(allow_nan=False) | st.text(max_size=20),
    lambda inside: (
        st.lists(inside, max_size=4)
        | st.dictionaries(
            st.sampled_from(
                ["@type", "name", "recipeInstructions", "itemListElement", "text", "prepTime", "@graph", "item"]
            ),
            inside | st.just("Recipe"),
            max_size=5,
        )
    ),
    max_leaves=20,
)


@pytest.mark.law
@given(_JSON)
def test_any_json_is_read_or_refused_in_a_sentence(document: Any) -> None:
    try:
        found = read_recipes(json.dumps(document), "any.json")
    except InputProblem:
        return
    assert all(one.name and one.steps for one in found)
