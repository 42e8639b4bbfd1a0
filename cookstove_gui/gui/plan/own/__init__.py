"""The tab where a cook adds and changes tasks, foods and words."""
