"""Two sets of pieces held against each other: which dies and templates stay, what moves, and a picture of both."""
