"""What a typed reading means: thermometer checks, emissivity, and the air where the stove stands."""
