"""A PDF whose objects are written out once.

pydyf reads a file with an identifier (ISO 32000-1, 14.4) twice: into the file, and into the hash that is half
of the identifier. Each time it puts every object into words and packs every stream anew.
"""

import pydyf  # type: ignore[import-untyped]


class Written(pydyf.Object):  # type: ignore[misc]
    """An object as it will stand in the file. data: its bytes."""

    data = b""
    compressible = False

    def __init__(self, thing: pydyf.Object) -> None:
        super().__init__()
        self.number = thing.number
        self.generation = thing.generation
        self.data = thing.data
        self.compressible = thing.compressible


def write_out(pdf: pydyf.PDF) -> None:
    """Put every object into its final bytes: what is changed in one afterwards shows no more."""
    pdf.objects[:] = [thing if thing.free == "f" else Written(thing) for thing in pdf.objects]
