"""Entrances and exits in a performer's words."""

from collections.abc import Sequence

from sequencer.staging.staged import Coming, Standing


def only_entrances(standing: Standing) -> bool:
    """Whether nobody takes a formation, but somebody comes on or goes off."""
    return standing.path[0] == "entrances"


def comings_words(comings: Sequence[Coming]) -> str:
    """Who comes on and who goes off: "Wren and Moss come on from stage left; Sable goes off"."""
    told = []
    groups = dict.fromkeys((each.on, each.side) for each in comings)
    for on, side in groups:
        who = [each.who for each in comings if (each.on, each.side) == (on, side)]
        one = len(who) == 1
        names = who[0] if one else f"{', '.join(who[:-1])} and {who[-1]}"
        does = (
            ("comes on" if one else "come on") if on else ("goes off" if one else "go off")
        )  # fmt: skip
        where = f" {'from' if on else 'to'} {side}" if side else ""
        told.append(f"{names} {does}{where}")
    return "; ".join(told)
