"""What Lighthouse makes of the speed of pages, on a slow phone that it works out from this machine.

Run on a machine that does nothing else: python -m tests.bench.page_speed FOLDER...
FOLDER: the public tree of a published site, `output/public`.
"""

import sys
from pathlib import Path

from tests.outside.conftest import CHECKERS
from tests.outside.host import hosted
from tests.outside.test_pages_lighthouse import report_on

PAGES = ("index.html", "recipes/blackcurrant-and-bay-cupcakes.html")
FIGURES = (
    "first-contentful-paint",
    "largest-contentful-paint",
    "total-blocking-time",
    "cumulative-layout-shift",
)


def main(folders: list[str]) -> None:
    """One line a page: its score of 100, then the figures that it is made of."""
    for folder in folders:
        with hosted({"/": Path(folder)}) as host:
            for page in PAGES:
                report = report_on(f"{host.address}/{page}", CHECKERS, ["performance"])
                score = round(100 * report["categories"]["performance"]["score"])
                told = (f"{name} {report['audits'][name]['displayValue']}" for name in FIGURES)
                print(f"{score:3}  {folder}/{page}  {', '.join(told)}")


if __name__ == "__main__":
    main(sys.argv[1:])
