"""Cautions and the published limits behind them; nothing here permits anything."""
