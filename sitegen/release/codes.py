"""The faults that only a build can meet: of the machine and the output folder, not of a file's text."""

from sitegen.faults import FaultCode, Severity

ANOTHER_BUILD = FaultCode(
    "another-build",
    Severity.ERROR,
    "Two builds of one folder at the same time would write over each other.",
    "Wait until the other has ended, and publish again.",
    file="",
)
CANNOT_WRITE = FaultCode(
    "cannot-write",
    Severity.ERROR,
    "The new output could not be written, because the disk is full or a folder's rights forbid it. "
    "The old output was kept.",
    "Make room, or give write rights to the folder, and publish again.",
    file="",
)
CANNOT_READ = FaultCode(
    "cannot-read",
    Severity.ERROR,
    "A file that was there when the folder was listed could not be read when it was wanted.",
    "Look whether the file is still there and may be read, and publish again.",
    file="",
)
CHANGED_MEANWHILE = FaultCode(
    "changed-meanwhile",
    Severity.ERROR,
    "A file was saved anew, or an entry of the cache removed, while the build was reading it, so that the "
    "output would have been half old and half new.",
    "Publish again.",
    file="",
)
PICTURE_UNPRINTABLE = FaultCode(
    "picture-unprintable",
    Severity.ERROR,
    "A picture begins as one, but cannot be read to its end: most often a copy that was cut short.",
    "Copy the picture again from the camera or from where it was edited.",
    file="",
)
CARD_FAILED = FaultCode(
    "card-failed",
    Severity.ERROR,
    "The press tripped over one card. The recipe may be sound, and the theme or the press at fault.",
    "Try the recipe with the theme that comes with the program; if it still fails, report it.",
    file="",
)
THEME_UNUSABLE = FaultCode(
    "theme-unusable",
    Severity.ERROR,
    "The theme that `site.yaml` names is not there, or one of its files is missing or wrong.",
    "Mend the theme, or write `theme: oatcloth`.",
    file="",
)
LEAK = FaultCode(
    "leak",
    Severity.ERROR,
    "A file of the public tree holds what is only for subscribers: words, a picture, a card. Nothing was "
    "published, and the old output was kept.",
    "Look where the words come from: a technique page, the theme, or another recipe; or let the recipe show "
    "them to everyone (`public-shows`).",
    file="",
)
WORKER_DIED = FaultCode(
    "worker-died",
    Severity.ERROR,
    "One of the processes that print cards and cut pictures was ended from outside, most often by a machine "
    "that had no memory left. The old output was kept.",
    "Publish again with '--jobs 1', or on a machine with more memory.",
    file="",
)
CLUSTER_UNUSABLE = FaultCode(
    "cluster-unusable",
    Severity.ERROR,
    "The cluster that was to do the work does not answer, or its workers run another program or do not see "
    "the folder. The old output was kept.",
    "Mend the cluster, or publish without '--cluster'.",
    file="",
)

CODES = (
    ANOTHER_BUILD,
    CANNOT_WRITE,
    CANNOT_READ,
    CHANGED_MEANWHILE,
    PICTURE_UNPRINTABLE,
    CARD_FAILED,
    THEME_UNUSABLE,
    LEAK,
    WORKER_DIED,
    CLUSTER_UNUSABLE,
)
