"""A maker's price list: YAML text to what costs are reckoned from."""
