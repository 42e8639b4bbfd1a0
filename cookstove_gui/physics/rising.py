"""How warmth hurries a yeast dough."""

DOUBLES_EVERY = 10.0  # K; the rule of thumb for fermentation between a cool and a warm kitchen (Q10 of 2)
COLDEST, WARMEST = 283.0, 308.0  # K; below and above, yeast no longer follows the rule


def rising_time_factor(temperature_kitchen: float, temperature_reference: float) -> float:
    """What a rise takes in a kitchen, as a multiple of what it takes in another.

    Parameters
    ----------
    temperature_kitchen, temperature_reference : float
        Of the one and of the other [K]; beyond `COLDEST` and `WARMEST` held at their value.

    Returns
    -------
    float
        [-]

    Raises
    ------
    Nothing: any temperature is taken as a kitchen's.

    Validity
    --------
    Within some 20 % of published ranges between 15 and 30 °C.

    Source
    ------
    Van 't Hoff's rule with a Q10 of 2, as bakers' tables state it (the dough takes half as long 10 K warmer).
    """
    here = min(max(temperature_kitchen, COLDEST), WARMEST)
    return float(2.0 ** ((temperature_reference - here) / DOUBLES_EVERY))
