"""The faults of a row of a larder, with a sample of each: right, and gone wrong."""

from sitegen.faults import FaultCode, Severity


def _error(code: str, meaning: str, cure: str, good: str, bad: str) -> FaultCode:
    return FaultCode(code, Severity.ERROR, meaning, cure, good, bad, file="larder.yaml")


def _sample(weight: str = "5 g", fills: str = "1 metric_teaspoon", source: str = "own-scales") -> str:
    density = f"{{method: level, weight: {weight}, fills: {fills}, source: {source}}}"
    return f"smoked salt:\n  allergens: {{eu: [], us: []}}\n  roles: [salt]\n  density:\n    - {density}\n"


UNKNOWN_SOURCE = _error(
    "unknown-source",
    "A figure names a source that the table of sources has not, so that nobody could look it up.",
    "Name a known source, such as own-scales for what was weighed in the school's kitchen.",
    _sample(),
    _sample(source="own-scale"),
)
BAD_WEIGHT = _error(
    "bad-weight",
    "A weight in the larder is a number over 0 and a unit of weight.",
    "Write it as 125 g.",
    _sample(),
    _sample(weight="5 grms"),
)
BAD_MEASURE = _error(
    "bad-measure",
    "A density says which measure is filled, and a bare cup or spoon differs from country to country.",
    "Write it as 1 us_cup, 1 metric_cup, 1 metric_tablespoon, 1 metric_teaspoon or 100 ml.",
    _sample(),
    _sample(fills="1 tsp"),
)
UNKNOWN_ALLERGEN = _error(
    "unknown-allergen",
    "A word under 'allergens' is none of those that the region's law names: it would print a wrong label.",
    "Use the law's word: cereals and nuts by their own names.",
    "celery salt:\n  allergens: {eu: [celery], us: []}\n",
    "celery salt:\n  allergens: {eu: [celeri], us: []}\n",
)
ALLERGENS_UNSAID = _error(
    "allergens-unsaid",
    "A new ingredient does not say which allergens it has, and silence would be read as none.",
    "Write allergens: {eu: [...], us: [...]}, with empty lists where it has none.",
    "smoked salt:\n  allergens: {eu: [], us: []}\n",
    "smoked salt:\n  roles: [salt]\n",
)
UNKNOWN_ROLE = _error(
    "unknown-role",
    "A role that no rule knows: rounding, balance and cautions would pass the ingredient by.",
    "Use a role that other ingredients have.",
    "smoked salt:\n  allergens: {eu: [], us: []}\n  roles: [salt]\n",
    "smoked salt:\n  allergens: {eu: [], us: []}\n  roles: [slat]\n",
)
NAME_TAKEN = _error(
    "name-taken",
    "A name or spelling already means another ingredient, so that recipes would be read as that one.",
    "Write the row under the ingredient's own name, or choose another spelling.",
    "unsalted butter:\n  also: [baker's butter]\n",
    "butter:\n  also: [baker's butter]\n",
)
IMPROBABLE_DENSITY = FaultCode(
    "improbable-density",
    Severity.ADVICE,
    "A measure of this ingredient would be lighter than dried leaves or heavier than any syrup.",
    "Weigh it again, and look at the unit and the measure.",
    good=_sample(),
    bad=_sample(weight="5 kg"),
    file="larder.yaml",
)

CODES: tuple[FaultCode, ...] = (
    UNKNOWN_SOURCE, BAD_WEIGHT, BAD_MEASURE, UNKNOWN_ALLERGEN, ALLERGENS_UNSAID, UNKNOWN_ROLE, NAME_TAKEN,
    IMPROBABLE_DENSITY,
)  # fmt: skip
