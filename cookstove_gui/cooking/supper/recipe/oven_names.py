"""Names of oven heats in old recipes, read in the table that the cook chose, else in one that knows the name."""

from cookstove_gui.cooking.fit.bands import DEFAULT_TABLE, BandTable, band_tables
from cookstove_gui.resource_files import table
from cookstove_gui.stove.entries import HeatBand


def oven_named(name: str, table_key: str = DEFAULT_TABLE) -> tuple[HeatBand, str] | None:
    """The band that a name stands for and the source that says so; none for a name that no table knows.

    The published tables disagree, so what comes back is for the cook to confirm.
    """
    wanted = " ".join(name.casefold().replace("-", " ").split())
    tables = sorted(band_tables(), key=lambda one: one.key != table_key)
    same = table("bands.toml")["same"].get(wanted)
    for called in (wanted, same["as"]) if same else (wanted,):
        for one in tables:
            band = _band(one, called)
            if band is not None:
                note = "" if called == wanted else f"; “{wanted}” as “{called}”: {same['source']}"
                return band, one.source + note
    return None


def _band(one: BandTable, name: str) -> HeatBand | None:
    return next((band for band in one.bands if band.name == name), None)
