"""guidegen: one project file in, a printable build guide for low-voltage lights out."""

__version__ = "0.1.0"
