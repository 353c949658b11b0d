"""patternforge drafts leather wallets from declared measurements and writes the cutting files."""

__version__ = "0.1.0"
