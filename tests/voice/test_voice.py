"""The quick part of the checker: a few firings, few moments; how often each rule is broken may only fall."""

from tests.voice.known import KNOWN_FAILURES
from tests.voice.tally import NAMES, Tally, added, tally_of_number

_FIRINGS = (1, 3)  # a new stove's first fire, a stove with a learned character
_STRETCHES = 2


def quick_tally() -> Tally:
    """The firings of the quick part."""
    return added(tally_of_number(number, _STRETCHES) for number in _FIRINGS)


def test_no_rule_is_broken_more_often_than_is_known() -> None:
    tally = quick_tally()
    unchecked = [name for name in NAMES if not tally[name].checked]
    assert not unchecked, f"never looked at: {unchecked}"
    grown = [
        f"{name}: {tally[name].failed} of {tally[name].checked}, known {KNOWN_FAILURES.get(name, 0)}; "
        f"{tally[name].examples[:1]}"
        for name in NAMES
        if tally[name].failed > KNOWN_FAILURES.get(name, 0)
    ]
    assert not grown, "\n".join(grown)


def test_what_is_known_names_rules() -> None:
    assert set(KNOWN_FAILURES) <= set(NAMES)


if __name__ == "__main__":
    for rule, count in quick_tally().items():
        print(f'    "{rule}": {count.failed},  # of {count.checked}')
