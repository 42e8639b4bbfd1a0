"""A pan of which nothing but the contact is in doubt, on a cooktop without end."""

from cookstove_gui.cooking.pans.doubts import PanDoubts

NO_DOUBTS = PanDoubts(cooktop=None, cooktop_log_sd=0.0, evaporation_log_sd=0.0, amount_log_sd=0.0)
