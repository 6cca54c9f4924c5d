"""Run as `python -m guidegen`."""

from guidegen.cli import main

if __name__ == "__main__":
    main()
