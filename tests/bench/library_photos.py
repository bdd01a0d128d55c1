"""Photos of bakes that nobody baked, grained so that their JPEGs are as large as those of real ones."""

from dataclasses import dataclass
from functools import cache
from pathlib import Path
from random import Random

from PIL import Image, ImageChops, ImageDraw, ImageOps

SIZE = (1600, 1200)
QUALITY = 85
_ROOM = 240
"""Pixels by which a grain is larger than a photo: it is cut out at another place each time."""
_GRAINS = 6
_OCTAVES = (6, 24, 96, 400)
_SMALL = 4
"""Shapes are drawn this many times smaller, which makes their edges soft."""


@dataclass(frozen=True)
class Grain:
    """Noise in grey, larger than a photo."""

    image: Image.Image

    def cut(self, random: Random) -> Image.Image:
        left, top = random.randrange(_ROOM), random.randrange(_ROOM)
        return self.image.crop((left, top, left + SIZE[0], top + SIZE[1]))


def draw_photo(path: Path, seed: str) -> None:
    """Write a JPEG; the same seed gives the same bytes on the same Pillow."""
    random = Random(seed)
    photo = _coloured(random.choice(grains()), random, dark=40, light=210)
    bake = _coloured(random.choice(grains()), random, dark=20, light=250)
    photo.paste(bake, mask=_shapes(random))
    photo.save(path, "JPEG", quality=QUALITY)


@cache
def grains() -> tuple[Grain, ...]:
    """Those of this process: the same in each."""
    return tuple(Grain(_noise(Random(f"grain {number}"))) for number in range(_GRAINS))


def _noise(random: Random) -> Image.Image:
    """Noise of several sizes of grain, the finer the fainter."""
    whole = (SIZE[0] + _ROOM, SIZE[1] + _ROOM)
    sizes = [(octave * 4 // 3, octave) for octave in _OCTAVES]
    layers = [
        Image.frombytes("L", size, random.randbytes(size[0] * size[1])).resize(
            whole, Image.Resampling.BICUBIC
        )
        for size in sizes
    ]
    made = layers[0]
    for layer in layers[1:]:
        made = Image.blend(made, layer, 0.3)
    fine = Image.frombytes("L", whole, random.randbytes(whole[0] * whole[1]))
    return ImageChops.add(made, fine.point(lambda value: value // 24), offset=-5)


def _even(random: Random, size: tuple[int, int]) -> Image.Image:
    return Image.frombytes("L", size, random.randbytes(size[0] * size[1]))


def _coloured(grain: Grain, random: Random, dark: int, light: int) -> Image.Image:
    black = tuple(random.randrange(dark, dark + 60) for _ in range(3))
    white = tuple(random.randrange(light - 90, light) for _ in range(3))
    return ImageOps.colorize(grain.cut(random), black, white)


def _shapes(random: Random) -> Image.Image:
    """Where the bake is: some rounds and squares."""
    width, height = SIZE[0] // _SMALL, SIZE[1] // _SMALL
    mask = Image.new("L", (width, height))
    draw = ImageDraw.Draw(mask)
    for _ in range(random.randrange(3, 14)):
        x, y, across = random.randrange(width), random.randrange(height), random.randrange(30, 140)
        shape = draw.ellipse if random.randrange(3) else draw.rectangle
        shape((x - across // 2, y - across // 2, x + across // 2, y + across // 2), fill=255)
    return mask.resize(SIZE, Image.Resampling.BILINEAR)
