"""A calendar day in words, with its week, for a night that several people write into their diaries."""

import datetime as dt

_DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
_MONTHS = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip


def day_words(day: str) -> str:
    """A day as weekday, date and week: "Saturday 19 June 2027, week 24".

    Parameters
    ----------
    day : str
        YYYY-MM-DD

    Raises
    ------
    ValueError
        If it is not a calendar day.

    Notes
    -----
    Source: ISO 8601 weeks, by the standard library; a week of another year is named with it.
    """
    date = dt.date.fromisoformat(day)
    year, week, weekday = date.isocalendar()
    of_year = "" if year == date.year else f" of {year}"
    return (
        f"{_DAYS[weekday - 1]} {date.day} {_MONTHS[date.month - 1]} {date.year}, "
        f"week {week}{of_year}"
    )
