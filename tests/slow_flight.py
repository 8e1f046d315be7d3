"""A second process that takes its time over each performer: what a test does meanwhile, it does while it flies."""

from time import monotonic, sleep

from sequencer.desk.views.shared_flight import fly_for
from sequencer.progress import stop_if_unwanted
from sequencer.staging.in_flight import flown_show

LONG = 3.0  # [s] for which whoever flies can be stopped, hung up or killed


def fly_slowly(pipe, long=LONG):
    """As `fly_for`."""
    work = flown_show.flown_performer

    def flown(*given):
        end = monotonic() + long
        while monotonic() < end:
            stop_if_unwanted()
            sleep(0.01)
        return work(*given)

    flown_show.flown_performer = flown
    fly_for(pipe)
