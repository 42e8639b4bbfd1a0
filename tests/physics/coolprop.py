"""CoolProp, loaded when a test first asks it: that takes seconds, which listing the tests shouldn't cost."""


def PropsSI(*asked: str | float) -> float:
    """As `CoolProp.CoolProp.PropsSI`."""
    from CoolProp.CoolProp import PropsSI as theirs

    return float(theirs(*asked))


def HAPropsSI(*asked: str | float) -> float:
    """As `CoolProp.HumidAirProp.HAPropsSI`."""
    from CoolProp.HumidAirProp import HAPropsSI as theirs

    return float(theirs(*asked))
