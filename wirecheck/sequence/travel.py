"""What takes time to move: a damper blade, a zone valve, air and water until they are proved."""

from __future__ import annotations

#: Times closer than this count as one.
INSTANT_S = 1e-9


class Travel:
    """One thing on its way between shut (0) and open (1), as `aim` last sent it."""

    def __init__(self, opens_s: float, shuts_s: float | None = None) -> None:
        """Shut and at rest.

        Args:
            opens_s: seconds from shut to fully open.
            shuts_s: seconds from open to shut; as long as opening if nothing is said.
        """
        self._opens_s = opens_s
        self._shuts_s = opens_s if shuts_s is None else shuts_s
        self._place = 0.0
        self._since_s = 0.0
        self._aim = 0.0

    def put(self, place: float) -> None:
        """Have it stand somewhere, at rest."""
        self._place = self._aim = place

    def aim(self, now_s: float, *, wanted_open: bool) -> None:
        """Send it one way; it goes on from where it is."""
        aim = 1.0 if wanted_open else 0.0
        if aim != self._aim:
            self._place, self._since_s, self._aim = self.place_at(now_s), now_s, aim

    def place_at(self, now_s: float) -> float:
        """Where it is: 0 shut, 1 open."""
        arrives_s = self.arrives_s
        if arrives_s is None or now_s >= arrives_s - INSTANT_S:
            return self._aim
        share = (now_s - self._since_s) / (arrives_s - self._since_s)
        return self._place + (self._aim - self._place) * share

    @property
    def arrives_s(self) -> float | None:
        """When it will be, or was, where it was sent; None if it stood there already."""
        if self._place == self._aim:
            return None
        takes_s = self._opens_s if self._aim else self._shuts_s
        return self._since_s + takes_s * abs(self._aim - self._place)

    def is_open(self, now_s: float) -> bool:
        """Whether it is fully open, and not just leaving."""
        return self._aim == 1.0 and self.place_at(now_s) == 1.0

    def is_shut(self, now_s: float) -> bool:
        """Whether it is fully shut, and not just leaving."""
        return self._aim == 0.0 and self.place_at(now_s) == 0.0

    def state(self, now_s: float) -> str:
        """In words: ``shut``, ``opening``, ``open`` or ``closing``."""
        place = self.place_at(now_s)
        if place == self._aim:
            return "open" if place else "shut"
        return "opening" if self._aim else "closing"
