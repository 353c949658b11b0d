"""A page of this machine alone that shows a wallet and refreshes itself: what it shows, its text, its server."""
