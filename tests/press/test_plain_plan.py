"""A plan of the day as plain text."""

from dataclasses import replace

from sitegen.press.plain_plan import plain_plan
from tests.press.plans import LOAF


def test_the_whole_plan_reads_as_a_cook_would_write_it() -> None:
    assert plain_plan(LOAF) == (
        "Honey, sesame; a loaf\n"
        "\n"
        "Friday 4 December 2026\n"
        " 20:00  Starter, step 1: Stir the flour, water & yeast [5 min hands-on; 715 min waiting,\n"
        "        until 08:00]\n"
        "\n"
        "Saturday 5 December 2026\n"
        " 08:00  Loaf (Sandwich bread), step 2: Knead [20 min hands-on] ! the rest waits for it\n"
        " 08:20  Loaf, step 3: Bake [40 min in the oven, until 09:00] ! within 5 min of step 2\n"
        " 09:00  Loaf, step 4: Turn out [2 min hands-on; 60 min waiting, until 10:02] ! out of\n"
        "        the oven\n"
        "\n"
        "Begin at 20:00, Friday 4 December 2026; ready at 10:02, Saturday 5 December 2026.\n"
        "Start to finish 14 h: 25 min hands-on, 13 h 35 min waiting.\n"
        "One step after another it would take 15 h.\n"
        "No plan for one cook and this oven is shorter: proved.\n"
        "\n"
        "Your hands are free from 20:05 to 08:00 on Saturday.\n"
        "Can be made the day before: Starter.\n"
    )


def test_a_plan_on_its_own_clock_names_no_day_and_no_end() -> None:
    rows = tuple(replace(row, day="", start="+1:25", end="") for row in LOAF.rows)
    told = plain_plan(replace(LOAF, rows=rows, starts="", ready="", written_order=""))
    assert "December" not in told.partition("Your hands")[0]
    assert " +1:25  Loaf, step 3: Bake [40 min in the oven] ! within" in told
    assert "Begin at" not in told
    assert "One step after another" not in told


def test_lines_fit_a_terminal() -> None:
    assert max(len(line) for line in plain_plan(LOAF).splitlines()) <= 88
