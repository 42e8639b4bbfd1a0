"""An offline desktop companion for people who cook on wood-fired cookstoves."""
