"""What leads a browser to the desk is there for nobody else, or not at all."""

import os
from pathlib import Path

import pytest

from sitegen.desk import door as door_module
from sitegen.desk.door import NotPrivate, door


def test_on_a_disk_that_keeps_no_rights_the_address_is_not_written(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """As on disks with a FAT file system, where every file can be read by all."""
    fstat = os.fstat

    def for_all(opened: int) -> os.stat_result:
        return os.stat_result((0o100644, *fstat(opened)[1:]))

    monkeypatch.setattr(door_module.os, "fstat", for_all)
    with pytest.raises(NotPrivate), door(tmp_path, "http://127.0.0.1:8120/secret/"):
        pass
    assert list((tmp_path / ".sitegen").iterdir()) == []
