"""Recipe files in; a checked, scaled and converted site and PDF cards out.

The trip is `source` -> `kitchen` -> `timing` -> `sheet` -> `press` -> `release`; see DEVELOPERS.md.
"""

__version__ = "0.1.0"
