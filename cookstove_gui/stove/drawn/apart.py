"""Marks along a line moved apart, so that none covers another, on screen and on paper."""

from collections.abc import Sequence


def moved_apart(wanted: Sequence[float], gaps: Sequence[float], ends: tuple[float, float]) -> list[float]:
    """Places between two ends, as near to the wanted ones as they can be with these gaps, by least squares.

    Isotonic regression of the places less the gaps before them, by pooling adjacent violators (Ayer et al. 1955). Where
    there is not room enough, all gaps shrink alike.
    """
    low, high = ends
    share = min(1.0, max(high - low, 0.0) / max(sum(gaps), 1e-9))
    before = [share * sum(gaps[:place]) for place in range(len(wanted))]
    pools: list[tuple[float, int]] = []  # mean of what is pooled, and how many
    for place, left in zip(wanted, before, strict=True):
        mean, count = place - left, 1
        while pools and pools[-1][0] > mean:
            other, many = pools.pop()
            mean, count = (other * many + mean * count) / (many + count), many + count
        pools.append((mean, count))
    most = max(high - (before[-1] if before else 0.0), low)
    moved = [min(max(mean, low), most) for mean, count in pools for _ in range(count)]
    return [mean + left for mean, left in zip(moved, before, strict=True)]
