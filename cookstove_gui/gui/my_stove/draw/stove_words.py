"""What a stove may be like, key by key, in the words of Set-up and of the six questions."""

FIRED = (("used", "yes"), ("new", "no, it is new"))
FIREBOX = (("left", "left"), ("right", "right"), ("above", "above"), ("below", "below"))
PIPE = (("left", "left"), ("middle", "middle"), ("right", "right"))
TANK = (("none", "none"), ("left", "left"), ("right", "right"))
LIDS = (("lids", "lids"), ("plate", "one plate"))
CLOSET = (("none", "none"), ("closet", "above the top"))
