"""Every row of the data files holds, says where it comes from, and stands in the generated page."""

import re

import numpy as np
import pytest

from tests.reference import ROOT, UNVERIFIED, VERIFIED, Check, check, checks, si
from tests.reference.table import PAGE, markdown

COMPUTED = [row for row in checks() if not row.test]
TESTED = [row for row in checks() if row.test]


@pytest.mark.reference
@pytest.mark.parametrize("row", COMPUTED, ids=lambda row: row.id)
def test_row_holds(row: Check) -> None:
    np.testing.assert_array_less(np.abs(row.answer() - row.expected()), row.allowed() + 1e-12)


def test_rows_name_a_test_that_names_them() -> None:
    texts = {row.test: (ROOT / row.test.split("::")[0]).read_text(encoding="utf-8") for row in TESTED}
    assert not [
        row.id
        for row in TESTED
        if f"def {row.test.split('::')[1]}(" not in texts[row.test] or f'"{row.id}"' not in texts[row.test]
    ]


def test_each_id_is_given_once() -> None:
    ids = [row.id for row in checks()]
    assert len(ids) == len(set(ids))


def test_rows_say_where_from_and_how_verified() -> None:
    words = (*VERIFIED, *UNVERIFIED)
    assert not [row.id for row in checks() if not row.source or not any(word in row.verified for word in words)]


def test_rows_of_memory_alone_are_not_called_verified() -> None:
    assert not check("8.1").is_verified
    assert not check("13.10").is_verified
    assert check("1.1-saturation").is_verified


def test_docstrings_name_rows_that_exist() -> None:
    ids = {row.id for row in checks()}
    named: set[str] = set()
    for path in (ROOT / "cookstove_gui").rglob("*.py"):
        for sentence in re.findall(r"rows?\s+(`[^.]*?)\s+in\s+tests/reference", path.read_text(encoding="utf-8")):
            named |= set(re.findall(r"`([^`]+)`", sentence))
    missing = {name for name in named if not any(id == name or id.startswith(name.rstrip("*")) for id in ids)}
    assert not missing


def test_page_of_checks_is_up_to_date() -> None:
    assert PAGE.read_text(encoding="utf-8") == markdown(), "run python -m tests.reference"


def test_units_are_read() -> None:
    assert si("212 °F") == pytest.approx(373.15)
    assert si("9 °F", difference=True) == pytest.approx(5.0)
    np.testing.assert_allclose(si("1, 2 kJ/kg"), [1000.0, 2000.0])
    assert si("sphere") == "sphere"
