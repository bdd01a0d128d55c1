"""A run of stamping: copies, the register, what is at fault, and what a run that was cut short leaves."""

import csv
import os
import re
from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, datetime
from hashlib import sha256
from pathlib import Path

import pikepdf
import pytest

from sitegen.press.mark_face import MarkFace
from sitegen.press.stamp import CardStamp, Lock
from sitegen.release import stamp_codes
from sitegen.release.build import WORKSHOP
from sitegen.release.lock import only_build
from sitegen.release.proof import catalogue
from sitegen.release.stamp_cards import NotStamped
from sitegen.release.stamp_work import UNFINISHED
from sitegen.release.stamping import Stamped, StampOrder, copy_file, stamp
from tests.press.plain_pdfs import TIDY, plain_pdf
from tests.release.small_school import SITE, tree_hashes

NOW = datetime(2026, 7, 3, 23, 30, tzinfo=UTC)
"""In the school's zone it is the fourth already."""
NAMES = "name,town\nAda Marrow,Wells\nBo Quill,Ely\nCy Tart,Ely\n"


@pytest.fixture
def order(tmp_path: Path) -> StampOrder:
    """One card for three names, in a school of nothing but its site file."""
    root = tmp_path / "school"
    (root / "content").mkdir(parents=True)
    (root / "content" / "site.yaml").write_text(SITE)
    (root / "subscribers.csv").write_text(NAMES)
    (root / "cards").mkdir()
    (root / "cards" / "tart.pdf").write_bytes(plain_pdf(TIDY, TIDY))
    return StampOrder(root, (root / "cards" / "tart.pdf",), root / "subscribers.csv", NOW)


def run(order: StampOrder, on_each: Callable[[], None] = lambda: None) -> Stamped:
    return stamp(order, lambda _total: None, on_each)


def register(order: StampOrder) -> list[dict[str, str]]:
    with (order.root / "stamped" / "register.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def codes(stamped: Stamped) -> list[str]:
    return [fault.code for fault in stamped.faults]


def test_each_name_gets_a_copy_and_the_register_tells_it(order: StampOrder) -> None:
    stamped = run(order)
    assert (stamped.made, stamped.kept, stamped.faults) == (3, 0, ())
    files = {
        f"stamped/000{number}-{slug}/tart-copy-{number}.pdf"
        for number, slug in enumerate(("ada-marrow", "bo-quill", "cy-tart"), start=1)
    }
    hashes = tree_hashes(order.root / "stamped")
    del hashes["register.csv"]
    assert {f"stamped/{name}" for name in hashes} == files
    for row in register(order):
        copy = (order.root / row["file"]).read_bytes()
        assert row["sha256"] == sha256(copy).hexdigest()
        assert row["day"] == "2026-07-04"
        expected = CardStamp(order.cards[0].read_bytes(), MarkFace()).copy(int(row["number"]), row["name"])
        assert copy == expected
    assert [row["name"] for row in register(order)] == ["Ada Marrow", "Bo Quill", "Cy Tart"]


def test_the_same_again_makes_nothing_and_changes_nothing(order: StampOrder) -> None:
    run(order)
    before = tree_hashes(order.root)
    stamped = run(replace(order, now=datetime(2027, 1, 1, tzinfo=UTC)))
    assert (stamped.made, stamped.kept) == (0, 3)
    assert tree_hashes(order.root) == before


def test_the_same_input_day_and_register_give_the_same_bytes(order: StampOrder, tmp_path: Path) -> None:
    run(order)
    other = tmp_path / "elsewhere"
    (other / "content").mkdir(parents=True)
    (other / "content" / "site.yaml").write_text(SITE)
    run(replace(order, root=other, jobs=2))
    assert tree_hashes(other / "stamped") == tree_hashes(order.root / "stamped")


def test_a_longer_list_in_another_order_keeps_every_number(order: StampOrder) -> None:
    run(order)
    order.names.write_text("Dot Bun\ncy tart\nAda Marrow\n")
    stamped = run(order)
    numbers = {row["name"].casefold(): int(row["number"]) for row in register(order)}
    assert numbers == {"ada marrow": 1, "bo quill": 2, "cy tart": 3, "dot bun": 4}
    assert (stamped.made, stamped.kept) == (2, 1)  # Cy's is another copy, written in other capitals


def test_a_changed_card_is_a_new_copy_and_the_old_one_stays_in_the_register(order: StampOrder) -> None:
    run(order)
    order.cards[0].write_bytes(plain_pdf(TIDY))
    assert run(order).made == 3
    rows = [row for row in register(order) if row["name"] == "Ada Marrow"]
    assert len({row["sha256"] for row in rows}) == len(rows) == 2
    assert {row["number"] for row in rows} == {"1"}


def test_a_copy_that_was_changed_or_lost_is_made_again(order: StampOrder) -> None:
    run(order)
    before = tree_hashes(order.root)
    first, second, _ = (order.root / row["file"] for row in register(order))
    first.unlink()
    second.write_bytes(b"%PDF-1.7 half of")
    assert run(order).made == 2
    assert tree_hashes(order.root) == before


def test_locked_copies_are_kept_too_and_another_lock_is_another_copy(order: StampOrder) -> None:
    locked = replace(order, lock=Lock(printing=True))
    assert run(locked).made == 3
    assert run(locked).kept == 3
    assert run(replace(order, lock=Lock(printing=False))).made == 3
    with pikepdf.open(order.root / register(order)[-1]["file"]) as pdf:
        assert not pdf.allow.print_highres


def test_several_cards_and_folders_of_them(order: StampOrder) -> None:
    (order.root / "cards" / "loaf.pdf").write_bytes(plain_pdf(TIDY))
    (order.root / "cards" / "notes.txt").write_text("not a card")
    stamped = run(replace(order, cards=(order.root / "cards",)))
    assert (stamped.made, stamped.faults) == (6, ())
    assert (order.root / "stamped/0002-bo-quill/loaf-copy-2.pdf").is_file()


def test_bad_rows_are_faults_and_the_others_are_stamped(order: StampOrder) -> None:
    order.names.write_bytes(b"name\nAda Marrow\nC\xe9dric\n\xe5\x90\x8d\nAda Marrow\nBo Quill\n")
    stamped = run(order)
    assert stamped.made == 2
    assert [(fault.place.line, fault.code) for fault in stamped.faults] == [
        (3, "row-not-utf-8"),
        (4, "name-unprintable"),
        (5, "name-twice"),
    ]
    assert stamped.texts["subscribers.csv"][1] == "Ada Marrow"


def test_bad_cards_are_faults_and_the_others_are_stamped(order: StampOrder) -> None:
    folder = order.root / "cards"
    card = order.cards[0].read_bytes()
    (folder / "cut.pdf").write_bytes(card[:900])
    (folder / "wide.pdf").write_bytes(plain_pdf(TIDY, "2 20 416 40 re f"))
    (folder / "given.pdf").write_bytes(CardStamp(card, MarkFace()).copy(9, "Eve Roll"))
    with pikepdf.open(order.cards[0]) as pdf:
        pdf.save(folder / "locked.pdf", encryption=pikepdf.Encryption(owner="o", user="u"))
    (order.root / "more").mkdir()
    (order.root / "more" / "tart.pdf").write_bytes(card)
    stamped = run(replace(order, cards=(folder, order.root / "more")))
    assert stamped.made == 3
    assert [(fault.place.file, fault.code) for fault in stamped.faults] == [
        ("cards/cut.pdf", "card-not-pdf"),
        ("cards/given.pdf", "card-stamped"),
        ("cards/locked.pdf", "card-encrypted"),
        ("cards/wide.pdf", "card-without-margin"),
        ("more/tart.pdf", "card-twice"),
    ]
    assert "page 2" in stamped.faults[3].sentence


def test_a_name_wider_than_a_low_card_is_told_and_keeps_its_number(order: StampOrder) -> None:
    order.cards[0].write_bytes(plain_pdf("10 10 20 20 re f", size=(300, 200)))
    order.names.write_text(f"{'W' * 60}\nBo Quill\n")
    stamped = run(order)
    assert (stamped.made, codes(stamped)) == (1, ["name-too-long"])
    assert {row["number"]: row["file"] for row in register(order)}["1"] == ""


@pytest.mark.parametrize("folder", ["output", "output/public/cards", "content", "themes/x"])
def test_no_copy_goes_where_it_would_be_published(folder: str, order: StampOrder, tmp_path: Path) -> None:
    with pytest.raises(NotStamped, match=folder.split("/")[0]):
        run(replace(order, into=order.root / folder))
    (tmp_path / "link").symlink_to(order.root / "output")
    (order.root / "output").mkdir()
    with pytest.raises(NotStamped):
        run(replace(order, into=tmp_path / "link" / "public"))


def test_copies_elsewhere_stand_in_the_register_of_the_school(order: StampOrder, tmp_path: Path) -> None:
    run(replace(order, into=tmp_path / "copies"))
    (first, *_) = register(order)
    assert Path(first["file"]) == tmp_path / "copies" / "0001-ada-marrow" / "tart-copy-1.pdf"
    assert not (tmp_path / "copies" / UNFINISHED).exists()


@pytest.mark.parametrize(
    ("name", "folder"),
    [
        ("Ada Marrow", "0007-ada-marrow"),
        ("../../etc/passwd", "0007-etc-passwd"),
        ("Żaneta Łoś", "0007-zaneta-os"),
        ("名無し", "0007"),
        ("..", "0007"),
        ("a" * 80, "0007-" + "a" * 40),
        ("C:\\con\0.pdf", "0007-c-con-pdf"),
    ],
)
def test_a_name_leads_to_no_other_folder(name: str, folder: str) -> None:
    assert copy_file(7, name, "tart") == f"{folder}/tart-copy-7.pdf"
    assert re.fullmatch(r"\d{4}(-[a-z0-9-]+)?", folder)


def test_a_damaged_register_stops_the_run_before_any_number_is_given(order: StampOrder) -> None:
    run(order)
    file = order.root / "stamped" / "register.csv"
    file.write_text(file.read_text().replace('"2","Bo', '"1","Bo'))
    before = tree_hashes(order.root)
    order.names.write_text("Dot Bun\n")
    stamped = run(order)
    assert (stamped.made, codes(stamped)) == (0, ["register-damaged"])
    assert (stamped.faults[0].place.file, stamped.faults[0].place.line) == ("stamped/register.csv", 3)
    assert tree_hashes(order.root) == {**before, "subscribers.csv": sha256(b"Dot Bun\n").hexdigest()}


def test_a_site_file_at_fault_is_told(order: StampOrder) -> None:
    (order.root / "content" / "site.yaml").write_text("name: [")
    assert run(order).made == 0
    assert codes(run(order)) != []
    assert not (order.root / "stamped").exists()


def test_a_build_at_work_is_waited_for_by_nobody(order: StampOrder) -> None:
    with only_build(order.root / WORKSHOP):
        stamped = run(order)
    assert (stamped.made, codes(stamped)) == (0, ["another-build"])


def test_a_full_disk_leaves_whole_copies_and_the_next_run_completes(
    order: StampOrder, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The second copy finds no room."""
    true = os.replace
    calls: list[Path] = []

    def replaced(source: Path, place: Path) -> None:
        calls.append(place)
        if len(calls) == 3:
            raise OSError(28, "No space left on device", str(place))
        true(source, place)

    with monkeypatch.context() as patched:
        patched.setattr("os.replace", replaced)
        stamped = run(order)
    assert codes(stamped) == ["copy-not-written"]
    copies = sorted((order.root / "stamped").rglob("tart-copy-*.pdf"))
    whole = [copy for copy in copies if UNFINISHED not in copy.parts]
    assert len(whole) == 1
    pikepdf.open(whole[0]).close()
    assert {row["name"] for row in register(order)} == {"Ada Marrow", "Bo Quill", "Cy Tart"}
    assert run(order).made == 3
    assert not (order.root / "stamped" / UNFINISHED).exists()
    assert all(row["sha256"] for row in register(order))


def test_every_code_can_be_explained() -> None:
    assert {row.code for row in stamp_codes.CODES} <= set(catalogue())
    assert {row.file for row in stamp_codes.CODES} == {"", stamp_codes.LIST}
