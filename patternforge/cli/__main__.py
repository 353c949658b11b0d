"""``python -m patternforge.cli``."""

from patternforge.cli.app import main

if __name__ == "__main__":
    main()
