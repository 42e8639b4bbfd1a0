"""What one rule says of a moment: the spot it is about, and the words that its caution leaves open."""

from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True, kw_only=True)
class About:
    """One occasion for a caution."""

    spot: str = ""
    words: dict[str, str] = field(default_factory=dict)  # by the name of the gap in the caution's text
