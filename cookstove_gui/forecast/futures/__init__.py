"""From a belief to what comes: projections, outlook, zones, turns of the fire, the reading worth taking."""
