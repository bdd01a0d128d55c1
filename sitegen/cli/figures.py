"""Sizes and times as a terminal shows them."""

_UNITS = ("bytes", "kB", "MB", "GB", "TB")


def size(count: int) -> str:
    """Bytes in decimal units (SI, as disks are sold): '812 bytes', '4.1 kB', '120 MB'."""
    amount, unit = float(count), 0
    while amount >= 999.5 and unit < len(_UNITS) - 1:
        amount, unit = amount / 1000, unit + 1
    return f"{amount:.1f} {_UNITS[unit]}" if unit and amount < 9.95 else f"{amount:.0f} {_UNITS[unit]}"


def duration(seconds: float, decimals: int = 1) -> str:
    """'0.4 s', '35.2 s', '2 min 05 s', '1 h 04 min'. decimals: of seconds below a minute."""
    if seconds < 59.5:
        return f"{seconds:.{decimals}f} s"
    minutes, rest = divmod(round(seconds), 60)
    return f"{minutes} min {rest:02} s" if minutes < 60 else f"{minutes // 60} h {minutes % 60:02} min"
