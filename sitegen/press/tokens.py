"""The tokens of a theme (`theme.yaml`), checked, and as CSS custom properties."""

from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import Annotated, Literal

import yaml
from pydantic import BaseModel, ConfigDict, Field, StringConstraints, ValidationError

from sitegen import limits

Colour = Annotated[str, StringConstraints(pattern=r"^#[0-9a-f]{6}$")]
Length = Annotated[str, StringConstraints(pattern=r"^\d+(\.\d+)?(rem|em|px|ch|mm|pt)$")]
Plain = Annotated[str, StringConstraints(pattern=r"^\d+(\.\d+)?$")]
Family = Annotated[str, StringConstraints(pattern=r"^[A-Za-z0-9 ,'\"-]+$")]
FaceName = Annotated[str, StringConstraints(pattern=r"^[A-Z][A-Za-z0-9]*( [A-Z][A-Za-z0-9]*)*$")]
FontPackage = Annotated[str, StringConstraints(pattern=r"^font_[a-z0-9_]+$")]
FontFileName = Annotated[str, StringConstraints(pattern=r"^[A-Za-z0-9_-]+\.ttf$")]


class ThemeUnusable(Exception):
    """A theme that cannot be used: its folder, and what is wrong, a sentence each."""

    def __init__(self, folder: Path, reasons: tuple[str, ...]) -> None:
        super().__init__(folder, reasons)
        self.folder = folder
        self.reasons = reasons


class _Closed(BaseModel):
    model_config = ConfigDict(
        frozen=True, extra="forbid", alias_generator=lambda name: name.replace("_", "-")
    )


class Colours(_Closed):
    """One scheme. ink on paper, faint on paper and accent on paper must be readable (WCAG AA)."""

    paper: Colour
    panel: Colour
    ink: Colour
    faint: Colour
    rule: Colour
    accent: Colour
    spark: Colour
    danger: Colour
    danger_panel: Colour


class Type(_Closed):
    """serif, sans: font stacks. body: the size of running text. leading: line height, a plain number."""

    serif: Family
    sans: Family
    body: Length
    small: Length
    title: Length
    heading: Length
    leading: Plain


class Spacing(_Closed):
    """measure: the width of running text. page: of everything. gutter: the margin at the edge of a phone."""

    measure: Length
    page: Length
    gutter: Length
    gap: Length
    touch: Length


class Face(_Closed):
    """One face of type. family: its name in style sheets. weight: as CSS counts.

    package, file: where it comes from, a Python package of fonts and a TrueType file of it.
    """

    family: FaceName
    weight: Annotated[int, Field(ge=100, le=900)]
    style: Literal["normal", "italic"] = "normal"
    package: FontPackage
    file: FontFileName


class Tokens(_Closed):
    """light and dark: the two schemes of colour. type, spacing, faces: see there."""

    name: str
    light: Colours
    dark: Colours
    type: Type
    spacing: Spacing
    faces: tuple[Face, ...]


def parent_of(text: str, folder: Path) -> str:
    """The theme that the text of a `theme.yaml` inherits from, '' for none. Raises ThemeUnusable."""
    name = _mapping(text, folder).get("inherits", "")
    if not isinstance(name, str):
        raise ThemeUnusable(folder, ("theme.yaml, inherits: the name of another theme is wanted",))
    return name


def read_tokens(texts: Sequence[str], folder: Path) -> Tokens:
    """The tokens of a theme.

    texts: its `theme.yaml`, then those of the themes that it inherits from. What one leaves out is taken
    from the next: section by section and, within a section, token by token; a list of faces is taken whole.
    Raises ThemeUnusable with a sentence for each fault.
    """
    merged: dict[str, object] = {}
    for text in reversed(texts):
        for key, value in _mapping(text, folder).items():
            under = merged.get(key)
            if isinstance(under, dict) and isinstance(value, dict):
                value = under | value
            merged[key] = value
    merged.pop("inherits", None)
    try:
        return Tokens.model_validate(merged)
    except ValidationError as error:
        raise ThemeUnusable(folder, tuple(_sentences(error))) from error


def _mapping(text: str, folder: Path) -> Mapping[str, object]:
    try:
        _refuse_too_much(text, folder)
        # Every value stays the text that was written: no date or number is made here that could fail.
        read = yaml.load(text, yaml.BaseLoader)
    except yaml.YAMLError as error:
        raise ThemeUnusable(folder, (f"theme.yaml is not YAML: {error}",)) from error
    if not isinstance(read, dict):
        raise ThemeUnusable(folder, ("theme.yaml: names and values are wanted, 'name: Oatcloth'",))
    return read


def _refuse_too_much(text: str, folder: Path) -> None:
    """Raises ThemeUnusable for values deep in each other, for too many, and for what repeats others."""
    depth = 0
    for count, event in enumerate(yaml.parse(text, yaml.BaseLoader)):
        depth += isinstance(event, yaml.CollectionStartEvent) - isinstance(event, yaml.CollectionEndEvent)
        if depth > limits.DEPTH or count > limits.VALUES or isinstance(event, yaml.AliasEvent):
            line = event.start_mark.line + 1 if event.start_mark else 0
            raise ThemeUnusable(folder, (f"theme.yaml, line {line}: more values than a theme needs",))


def custom_properties(tokens: Tokens) -> str:
    """Both schemes and all measures as CSS; the dark scheme is for screens only, paper stays light."""
    measures = [*_properties(tokens.type, "type"), *_properties(tokens.spacing, "space")]
    light = "".join([*_properties(tokens.light, "colour"), *measures])
    dark = "".join(_properties(tokens.dark, "colour"))
    return f":root{{{light}}}\n@media screen and (prefers-color-scheme:dark){{:root{{{dark}}}}}\n"


def _properties(values: BaseModel, kind: str) -> Iterator[str]:
    for name, value in values.model_dump(by_alias=True).items():
        yield f"--{kind}-{name}:{value};"


def _sentences(error: ValidationError) -> Iterator[str]:
    for found in error.errors():
        yield f"theme.yaml, {'.'.join(map(str, found['loc']))}: {found['msg']}"
