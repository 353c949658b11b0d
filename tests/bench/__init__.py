"""How quick the program is, as ratios to what the same machine takes in the same run for the least there is to do."""
