"""The page that shows a wallet folded, to be turned and closed by hand: one file that asks nothing of a network."""
