"""Entries as hypothesis draws them: every kind, every clock a log may hold, every text a cook can type."""

from datetime import UTC, datetime, timedelta

from hypothesis import strategies as st

from cookstove_gui.stove.entries import Entry, Kind

texts = st.text(st.characters(exclude_categories=("Cs",)), max_size=40)  # all of Unicode but half letters
moments = st.integers(min_value=-(2**51), max_value=2**52).map(
    lambda count: datetime(1970, 1, 1, tzinfo=UTC) + timedelta(microseconds=count)
)  # 1898 to 2112
offsets = st.integers(min_value=-14 * 60, max_value=14 * 60)
numbers = st.decimals(min_value=-40, max_value=1000, places=1, allow_nan=False).map(str)
fractions = st.decimals(min_value=0, max_value=1, places=2, allow_nan=False).map(str)
spots = st.sampled_from(["oven_centre", "top_front_left", "flue", "warming shelf", "ofen_tür"])

_contents = st.one_of(
    st.fixed_dictionaries(
        {"kind": st.just(Kind.READING), "spot": spots, "value": numbers, "unit": st.sampled_from("FC")}
    ),
    st.fixed_dictionaries({"kind": st.sampled_from([Kind.LIT, Kind.OUT, Kind.NOTE])}),
    st.fixed_dictionaries(
        {
            "kind": st.just(Kind.WOOD),
            "value": st.decimals(min_value="0.1", max_value=20, places=1).map(str),
            "unit": st.sampled_from(["kg", "lb"]),
        }
    ),
    st.fixed_dictionaries({"kind": st.just(Kind.WOOD)}),
    st.fixed_dictionaries({"kind": st.sampled_from([Kind.AIR, Kind.BYPASS]), "value": fractions}),
    st.fixed_dictionaries({"kind": st.just(Kind.OVEN_DOOR), "value": st.sampled_from(["open", "closed"])}),
    st.fixed_dictionaries({"kind": st.just(Kind.PAN), "spot": spots, "value": st.sampled_from(["on", "off"])}),
    st.fixed_dictionaries({"kind": st.just(Kind.CARRIED), "value": numbers, "unit": st.sampled_from("FC")}),
    st.fixed_dictionaries({"kind": st.sampled_from([Kind.TURNED, Kind.OVEN_OUT])}),
    st.fixed_dictionaries({"kind": st.just(Kind.PROBE), "value": numbers, "unit": st.sampled_from("FC")}),
    st.fixed_dictionaries(
        {"kind": st.just(Kind.DUE), "value": st.integers(min_value=0, max_value=1440).map(str), "unit": st.just("min")}
    ),
    st.fixed_dictionaries({"kind": st.just(Kind.OVEN_IN), "value": st.just("2.3"), "unit": st.sampled_from(["kg"])}),
)


@st.composite
def logs(draw: st.DrawFn, max_size: int = 12) -> tuple[Entry, ...]:
    """A session's entries at clocks that all differ, some of them taken back."""
    entries: list[Entry] = []
    clocks = draw(st.lists(moments, max_size=max_size, unique=True))
    for number, at in enumerate(clocks, start=1):
        content = draw(_contents)
        if number > 1 and draw(st.integers(min_value=0, max_value=4)) == 0:
            content = {
                "kind": draw(st.sampled_from([Kind.KEPT, Kind.VOID])),
                "value": str(draw(st.integers(min_value=1, max_value=number - 1))),
            }
        note = draw(texts)
        if content["kind"] is Kind.CARRIED:
            note = "±18.2; oven 236 ±22; coals 0.42 ±0.3"
        if content["kind"] is Kind.OVEN_IN and not note.strip():
            note = "loaf of bread"  # what goes in has a name
        entries.append(Entry(number=number, at=at, offset_minutes=draw(offsets), note=note, **content))
    return tuple(entries)


def reading(number: int, minute: float = 0.0, value: str = "385", spot: str = "oven_centre", unit: str = "F") -> Entry:
    """One reading, some minutes after seven in the morning."""
    return Entry(
        number=number,
        at=datetime(2026, 1, 5, 12, 0, tzinfo=UTC) + timedelta(minutes=minute),
        offset_minutes=-300,
        kind=Kind.READING,
        spot=spot,
        value=value,
        unit=unit,
    )
