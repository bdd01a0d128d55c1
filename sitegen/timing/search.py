"""A plan within a deadline, or the proof that there is none.

Every two tasks that want the same hands or oven are put in one order or the other. Where the windows
leave one order only, it is taken at once; else both are tried. A branch is left as soon as a window closes,
or as soon as the work of one resource cannot all be done in time.
Sources: J. Carlier and E. Pinson, "An algorithm for solving the job-shop problem" (Management Science 35,
1989), for taking forced orders; B. De Reyck and W. Herroelen (European Journal of Operational Research
111, 1998), for work with greatest gaps.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import combinations, permutations

from sitegen.timing.problem import Demand, Problem
from sitegen.timing.single_file import all_in_time
from sitegen.timing.windows import Network, Windows, longest_gaps

Order = tuple[int, int, int]
"""first, then, least time between their starts."""


class OutOfTries(Exception):
    """The search was given up before it knew."""


@dataclass(frozen=True)
class _Pair:
    """Two tasks that cannot share. lag: between starts if `one` goes first; back: if `other` does."""

    one: int
    other: int
    lag: int
    back: int


@dataclass
class _Branch:
    """One node of the search.

    order: what was added to come here, None at the root. pairs: still open. forced: what followed from it.
    orders: to try from here, the most promising first. doubts: how many less promising ones are left.
    """

    order: Order | None
    windows: Windows
    pairs: list[_Pair]
    doubts: int
    forced: list[tuple[int, int]] = field(default_factory=list)
    orders: Iterator[Order] = field(default_factory=lambda: iter(()))
    is_solved: bool = False


class Search:
    """The search of one problem. It may be asked for several deadlines, one after another."""

    def __init__(self, problem: Problem) -> None:
        self._problem = problem
        self._network = Network(len(problem.lengths), problem.gaps)
        self._by_resource = _by_resource(problem)
        self.tries_left = 0
        """Branches that the last question left unused."""
        self._ranks: Sequence[int] | None = None
        pairs = self._open_pairs()
        self._pairs: list[_Pair] = pairs or []
        self.is_possible = pairs is not None
        """False where the gaps alone contradict each other."""

    def starts_within(
        self, deadline: int, tries: int, ranks: Sequence[int] | None = None, doubts: int | None = None
    ) -> tuple[int, ...] | None:
        """A start for each task so that all end by a deadline; None where that cannot be.

        tries: how many branches may be looked at. ranks: of two tasks in conflict the one of lower rank is
        tried first, else the order that leaves more room. doubts: how often a less promising order may be
        taken on the way to a plan (limited discrepancy search, W. D. Harvey and M. L. Ginsberg, 1995); None
        for as often as it takes. Raises OutOfTries where tries or doubts were too few to know.
        """
        self.tries_left, self._ranks = tries, ranks
        windows = Windows.until(self._problem, deadline)
        if not self.is_possible or not self._network.narrow(windows, list(range(len(self._problem.lengths)))):
            return None
        return self._found(windows, len(self._pairs) if doubts is None else doubts, is_whole=doubts is None)

    def insist(self, first: int, then: int, lag: int) -> None:
        """From now on `then` starts at least `lag` after `first`."""
        self._network.add(first, then, lag)

    def give_way(self, first: int, then: int) -> None:
        """Take back what was insisted on last."""
        self._network.take_last(first, then)

    def _found(self, windows: Windows, doubts: int, *, is_whole: bool) -> tuple[int, ...] | None:
        """Depth first, on a stack of its own: a large problem goes deeper than Python's calls may."""
        stack = [self._branch(None, windows, self._pairs, doubts)]
        is_cut = False
        try:
            while stack:
                branch = stack[-1]
                if branch.is_solved:
                    return tuple(branch.windows.earliest)
                order = next(branch.orders, None)
                if order is None or (branch.doubts < 0 and not is_whole):
                    is_cut = is_cut or order is not None
                    self._leave(stack.pop())
                    continue
                doubts, branch.doubts = branch.doubts, branch.doubts - 1
                tried = branch.windows.copy()
                self._network.add(*order)
                if self._network.narrow(tried, [order[0], order[1]]):
                    stack.append(self._branch(order, tried, branch.pairs, doubts))
                else:
                    self._network.take_last(order[0], order[1])
            if is_cut:
                raise OutOfTries
            return None
        finally:
            while stack:
                self._leave(stack.pop())

    def _branch(self, order: Order | None, windows: Windows, pairs: list[_Pair], doubts: int) -> _Branch:
        """A branch with every forced order taken. Raises OutOfTries."""
        branch = _Branch(order, windows, pairs, doubts)
        if self.tries_left <= 0:
            self._leave(branch)
            raise OutOfTries
        self.tries_left -= 1
        left = self._forced_orders(windows, pairs, branch.forced)
        if left is None:
            return branch
        branch.pairs = left
        orders = self._orders_to_try(windows, left)
        branch.orders, branch.is_solved = iter(orders), not orders
        return branch

    def _leave(self, branch: _Branch) -> None:
        """Take back what a branch added to the network, last in first out."""
        for first, then in reversed(branch.forced):
            self._network.take_last(first, then)
        if branch.order is not None:
            self._network.take_last(branch.order[0], branch.order[1])

    def _forced_orders(
        self, windows: Windows, pairs: list[_Pair], forced: list[tuple[int, int]]
    ) -> list[_Pair] | None:
        """The pairs that stay open once every forced order is taken; None where the branch is dead.

        forced: grows by the orders that were added to the network.
        """
        while True:
            left: list[_Pair] = []
            moved: list[int] = []
            for pair in pairs:
                order = _forced(pair, windows)
                if order is None:
                    if not _is_settled(pair, windows):
                        left.append(pair)
                    continue
                self._network.add(*order)
                forced.append(order[:2])
                moved += order[:2]
            pairs = left
            if moved and not self._network.narrow(windows, moved):
                return None
            if not moved:
                return pairs if self._is_in_time(windows) else None

    def _is_in_time(self, windows: Windows) -> bool:
        earliest, latest = windows.earliest, windows.latest
        return all(
            all_in_time(
                (earliest[one.task] + one.offset, latest[one.task] + one.offset + one.length, one.length)
                for one in demands
            )
            for capacity, demands in self._by_resource
            if capacity == 1
        )

    def _orders_to_try(self, windows: Windows, pairs: list[_Pair]) -> list[Order]:
        """The orders of the conflict that is looked at next; none where starting early is a plan."""
        starts = windows.earliest
        clashing = [
            pair
            for pair in pairs
            if starts[pair.one] + pair.lag > starts[pair.other]
            and starts[pair.other] + pair.back > starts[pair.one]
        ]
        if clashing:
            return self._both_ways(clashing, windows)
        return self._crowd(windows)

    def _both_ways(self, clashing: list[_Pair], windows: Windows) -> list[Order]:
        def room(pair: _Pair) -> tuple[int, int]:
            return (
                windows.latest[pair.other] - windows.earliest[pair.one] - pair.lag,
                windows.latest[pair.one] - windows.earliest[pair.other] - pair.back,
            )

        ranks = self._ranks
        if ranks is None:
            pair = min(clashing, key=lambda each: sorted(room(each)))
            straight, turned = room(pair)
            is_straight = straight >= turned
        else:
            starts = windows.earliest
            pair = min(clashing, key=lambda each: min(starts[each.one], starts[each.other]))
            is_straight = ranks[pair.one] < ranks[pair.other]
        orders = [(pair.one, pair.other, pair.lag), (pair.other, pair.one, pair.back)]
        return orders if is_straight else orders[::-1]

    def _crowd(self, windows: Windows) -> list[Order]:
        """Where more is wanted of a resource at one time than there is: any one after any other."""
        starts = windows.earliest
        for capacity, demands in self._by_resource:
            for now in sorted(starts[one.task] + one.offset for one in demands if capacity > 1):
                crowd = [
                    one
                    for one in demands
                    if starts[one.task] + one.offset <= now < starts[one.task] + one.offset + one.length
                ]
                if sum(one.amount for one in crowd) > capacity:
                    return _one_after_another(crowd, windows)
        return []

    def _open_pairs(self) -> list[_Pair] | None:
        """The pairs that the gaps leave open; the orders that they force are added to the network."""
        gaps = longest_gaps(self._problem)
        if gaps is None:
            return None
        pairs = []
        for pair in self._all_pairs():
            onward, back = gaps[pair.one][pair.other], gaps[pair.other][pair.one]
            if onward >= pair.lag or back >= pair.back:
                continue
            can_lead, can_follow = back <= -pair.lag, onward <= -pair.back
            if can_lead and can_follow:
                pairs.append(pair)
            elif can_lead:
                self._network.add(pair.one, pair.other, pair.lag)
            elif can_follow:
                self._network.add(pair.other, pair.one, pair.back)
            else:
                return None
        return pairs

    def _all_pairs(self) -> Iterator[_Pair]:
        for resource, (capacity, demands) in zip(self._problem.resources, self._by_resource, strict=True):
            for one, other in combinations(demands, 2):
                differ = one.state != other.state
                if one.task == other.task or (one.amount + other.amount <= capacity and not differ):
                    continue
                keeps = {one.task, other.task} in self._problem.unchanged
                change = resource.change if differ and not keeps else 0
                lag = one.offset + one.length - other.offset + change
                back = other.offset + other.length - one.offset + change
                yield _Pair(one.task, other.task, lag, back)


def _by_resource(problem: Problem) -> list[tuple[int, list[Demand]]]:
    """Each resource's capacity, with the demands on it that last."""
    return [
        (resource.capacity, [one for one in problem.demands if one.resource == place and one.length])
        for place, resource in enumerate(problem.resources)
    ]


def _forced(pair: _Pair, windows: Windows) -> Order | None:
    """The order that a pair must take; its opposite may be impossible too, which the windows then show."""
    if windows.earliest[pair.one] + pair.lag > windows.latest[pair.other]:
        return pair.other, pair.one, pair.back
    if windows.earliest[pair.other] + pair.back > windows.latest[pair.one]:
        return pair.one, pair.other, pair.lag
    return None


def _is_settled(pair: _Pair, windows: Windows) -> bool:
    """Whether the windows alone keep a pair apart."""
    return (
        windows.latest[pair.one] + pair.lag <= windows.earliest[pair.other]
        or windows.latest[pair.other] + pair.back <= windows.earliest[pair.one]
    )


def _one_after_another(crowd: list[Demand], windows: Windows) -> list[Order]:
    """Every order of two of a crowd, the one that leaves most room first."""
    orders = [
        (first.task, then.task, first.offset + first.length - then.offset)
        for first, then in permutations(crowd, 2)
        if first.task != then.task
    ]
    return sorted(orders, key=lambda order: order[2] + windows.earliest[order[0]] - windows.latest[order[1]])
