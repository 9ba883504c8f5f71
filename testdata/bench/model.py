#!/usr/bin/env python3
"""The scenario model of one lot, vectorised in NumPy and SciPy: what the engine is timed and checked against.

usage: model.py LOT.json BATCHES SEEDS

LOT.json is written by BenchmarkAgainstVectors (valuation/versus_test.go). The model shares no code and no draws with the
engine. It plays the lot at the size that the file asks for (the timing), then BATCHES times that size in all (the
agreement), then with plain random draws from each of SEEDS seeds (the accuracy that the engine's draws are held beside),
and prints one JSON document of figures and times. The resale price is drawn here and integrated out there.
"""

import json
import sys
import time

import numpy as np
from scipy.integrate import quad
from scipy.special import betaincinv, ndtr, ndtri

NODES = np.linspace(-5, 5, 41)  # of the common factor, at which means given it are tabulated
REST = np.linspace(-4, 4, 25)  # scores over which what is left is averaged
WEIGHTS = np.exp(-REST * REST / 2) / np.exp(-REST * REST / 2).sum()
TIMINGS = 8  # the best of them counts, as for the engine
SPAN, KNOTS, MODES = 5.0, 512, 256  # normal scores that the quantiles are tabulated over; places of the mode


class Pert:
    """Quantiles of the modified PERT (beta, weight 4) on [0, 1], by place of the mode and normal score, inverted once."""

    def __init__(self):
        mode = np.linspace(0, 1, MODES + 1)[:, None]
        p = ndtr(np.linspace(-SPAN, SPAN, KNOTS + 1))
        self.unit = betaincinv(1 + 4 * mode, 5 - 4 * mode, p)

    def table(self, t):
        low, likely, high = t["low"], t["likely"], t["high"]
        if low == high:
            return np.full(KNOTS + 1, low)
        at = (likely - low) / (high - low) * MODES
        k = min(int(at), MODES - 1)
        unit = self.unit[k] + (at - k) * (self.unit[k + 1] - self.unit[k])
        return low + (high - low) * unit

    @staticmethod
    def at(table, z):
        x = np.clip((z + SPAN) * (KNOTS / (2 * SPAN)), 0, KNOTS - 1e-9)
        k = x.astype(np.int32)
        x -= k
        low = table[k]
        return low + x * (table[k + 1] - low)


def mean(t):
    return (t["low"] + 4 * t["likely"] + t["high"]) / 6


def zero(t):
    return t["low"] == t["likely"] == t["high"] == 0


class Scenarios:
    """One set of joint scenarios of the lot, each column stratified (a Latin hypercube) or plainly random."""

    def __init__(self, lot, pert, n, seed, plain=False):
        self.lot, self.pert, self.n, self.plain = lot, pert, n, plain
        self.rng = np.random.default_rng(seed)
        self.score = ndtri((np.arange(n) + 0.5) / n)
        self.factor = self.draw()
        self.play()

    def draw(self, rho=0.0):
        own = self.rng.standard_normal(self.n) if self.plain else self.rng.permutation(self.score)
        return own if rho == 0 else rho * self.factor + np.sqrt(1 - rho * rho) * own

    def value(self, t, rho=0.0):
        if t["low"] == t["high"]:
            return t["low"]
        return self.pert.at(self.pert.table(t), self.draw(rho))

    def given(self, t, rho):
        """The mean of t in every scenario given the common factor there."""
        if t["low"] == t["high"]:
            return t["low"]
        if rho == 0:
            return mean(t)
        z = rho * NODES[:, None] + np.sqrt(1 - rho * rho) * REST
        return np.interp(self.factor, NODES, self.pert.at(self.pert.table(t), z) @ WEIGHTS)

    def happens(self, chance, rho=0.0):
        if chance >= 1:
            return np.ones(self.n, bool)
        return self.draw(rho) > ndtri(1 - chance)

    def play(self):
        zeros = lambda: np.zeros(self.n)
        self.cash, self.labour, self.hours = zeros(), zeros(), zeros()
        self.lead, self.added, self.repair, self.hidden = zeros(), zeros(), zeros(), zeros()
        self.due, self.work, self.wait, self.more = zeros(), zeros(), zeros(), zeros()  # at the strip-down: money, hours, lead, days, at their means
        for line in self.lot["lines"]:
            self.line(line)
        for risk in self.lot["risks"]:
            self.risk(risk)
        self.around(self.hours)

    def line(self, line):
        rho, rates = line["loading"], self.lot["rates"]
        cash, labour, hours, lead = self.value(line["materials"], rho) + np.zeros(self.n), np.zeros(self.n), np.zeros(self.n), np.zeros(self.n)
        cash += self.value(line["outside"], rho)
        chief = max(sorted(line["hours"]), key=lambda trade: mean(line["hours"][trade]), default="body")
        for trade, t in line["hours"].items():
            x = self.value(t, rho)
            hours += x
            labour += x * rates[trade]
        for part in line["parts"]:
            self.part(part, rho, rates[chief], cash, labour, hours, lead)
        due, work, wait = self.foreknown(line, rho, rates, chief)
        if line["chance"] < 1:
            needed = self.happens(line["chance"], rho)
            cash, labour, hours, lead = cash * needed, labour * needed, hours * needed, lead * needed
            due, work, wait = due * needed, work * needed, wait * needed
        self.due += due
        self.work += work
        np.maximum(self.wait, wait, out=self.wait)
        self.cash += cash
        self.labour += labour
        self.hours += hours
        self.repair += cash + labour
        np.maximum(self.lead, lead, out=self.lead)

    def order(self, part, rate):
        """The options in the order that costs least in the mean, none dearer than the fallback."""
        last, holding = part["fallback"], self.lot["holding_per_day"]
        last = mean(last["price"]) + mean(last["hours"]) * rate + mean(last["lead_days"]) * holding
        cost = lambda o: mean(o["price"]) + mean(o["freight"]) + mean(o["extra_hours"]) * rate + mean(o["lead_days"]) * holding
        return sorted((o for o in part["options"] if cost(o) <= last), key=cost)

    def foreknown(self, line, rho, rates, chief):
        """What a line takes on average where it is needed, given the factor: money, hours, lead time."""
        due = self.given(line["materials"], rho) + self.given(line["outside"], rho) + np.zeros(self.n)
        work, wait = np.zeros(self.n), 0.0
        for trade, t in line["hours"].items():
            x = self.given(t, rho)
            work += x
            due += x * rates[trade]
        for part in line["parts"]:
            left, lead, last = 1.0, 0.0, part["fallback"]
            for o in self.order(part, rates[chief]):
                taken = left * o["chance"]
                left -= taken
                extra = taken * self.given(o["extra_hours"], rho)
                due += taken * (self.given(o["price"], rho) + self.given(o["freight"], rho)) + extra * rates[chief]
                work += extra
                lead += taken * mean(o["lead_days"])
            due += left * self.given(last["price"], rho)
            wait = max(wait, lead + left * mean(last["lead_days"]))
        return due, work, wait

    def part(self, part, rho, rate, cash, labour, hours, lead):
        open_ = np.ones(self.n, bool)
        for o in self.order(part, rate):
            taken = open_ & self.happens(o["chance"])
            open_ &= ~taken
            cash += np.where(taken, self.value(o["price"], rho) + self.value(o["freight"], rho), 0)
            if not zero(o["extra_hours"]):
                x = np.where(taken, self.value(o["extra_hours"], rho), 0)
                hours += x
                labour += x * rate
            np.maximum(lead, np.where(taken, self.value(o["lead_days"]), 0), out=lead)
        cash += np.where(open_, self.value(part["fallback"]["price"], rho), 0)
        np.maximum(lead, np.where(open_, self.value(part["fallback"]["lead_days"]), 0), out=lead)

    def risk(self, risk):
        rho, there = risk["loading"], self.happens(risk["chance"], risk["loading"])
        cash = np.where(there, self.value(risk["cost"], rho), 0)
        self.cash += cash
        self.hidden += cash
        self.added += np.where(there, self.value(risk["days"], rho), 0)
        self.due += np.where(there, self.given(risk["cost"], rho), 0)
        self.more += np.where(there, self.given(risk["days"], rho), 0)
        for trade, t in risk["hours"].items():
            x = np.where(there, self.value(t, rho), 0)
            self.hours += x
            self.labour += x * self.lot["rates"][trade]
            self.hidden += x * self.lot["rates"][trade]
            x = np.where(there, self.given(t, rho), 0)
            self.work += x
            self.due += x * self.lot["rates"][trade]

    def around(self, work):
        lot = self.lot
        freight, yard = self.value(lot["freight"]), self.value(lot["storage_days"])
        storage = np.maximum(0, yard - lot["storage_free"]) * lot["storage_per_day"]
        self.days = np.maximum(self.lead, work / lot["hours_per_week"] * 7) + self.added
        self.days = self.days + self.value(lot["inspection_queue"]) + self.value(lot["days_to_sell"])
        self.cash += freight + storage + self.days * lot["holding_per_day"]
        self.cost = self.cash + self.labour
        u = ndtr(self.draw())
        self.price = np.interp(u, lot["resale_chances"], lot["resale_values"])
        self.kept = np.exp((lot["ageing"]["mean"] + lot["ageing"]["sd"] * self.draw()) * self.days / 365) * (1 - lot["sell_percent"])
        self.got = np.zeros(self.n)
        self.stop(freight + storage)
        self.growth = 1 + lot["capital_rate"] * self.days / 365

    def stop(self, home):
        """At the strip-down: by what is known then, go on or take the way out."""
        lot, way, strip = self.lot, self.lot["way"], self.lot["strip"]
        hold, rate, price = lot["holding_per_day"], self.lot["rates"]["body"], lot["resale_mean"]
        days = np.maximum(self.wait, self.work / lot["hours_per_week"] * 7) + self.more + mean(lot["inspection_queue"]) + mean(lot["days_to_sell"])
        yearly = lot["ageing"]["mean"] + lot["ageing"]["sd"] ** 2 / 2
        net = price * np.exp(yearly * days / 365) * (1 - lot["sell_percent"]) - lot["sell_flat"]
        left = self.due - mean(strip["hours"]) * rate + hold * np.maximum(0, days - mean(strip["days"]))
        self.stops = net - left < mean(way["money"]) - mean(way["days"]) * hold
        hours, gone = self.value(strip["hours"]), self.value(strip["days"]) + self.value(way["days"])
        put = lambda column, x: np.where(self.stops, x, column)
        self.labour, self.hours, self.days = put(self.labour, hours * rate), put(self.hours, hours), put(self.days, gone)
        self.cash = put(self.cash, home + gone * hold)
        self.cost, self.kept = self.cash + self.labour, put(self.kept, 0)
        self.got = put(self.got, self.value(way["money"]))


def by_factor(s, column, slices=64):
    """A column's mean given the common factor, in every scenario, and the variance of that mean, what chance alone puts to it off."""
    k = np.minimum(slices - 1, (ndtr(s.factor) * slices).astype(int))
    means = np.bincount(k, column, slices) / np.bincount(k, minlength=slices)
    within = ((column - means[k]) ** 2).sum() / (len(k) - slices)
    return means[k], max(0.0, means.var() - within * slices / len(k))


def winners_error(n):
    """Mean (nothing below three bidders) and variance of t under a density proportional to phi(t)^2 Phi(t)^(n-2)."""
    weight = lambda t: np.exp(-t * t) * ndtr(t) ** (n - 2)
    whole = quad(weight, -9, 9)[0]
    m = quad(lambda t: t * weight(t), -9, 9)[0] / whole
    return (m if n > 2 else 0.0), quad(lambda t: t * t * weight(t), -9, 9)[0] / whole - m * m


class Bid:
    """What a bid brings: every house rule is read off the profits at its invoice total."""

    def __init__(self, s):
        lot, self.s, self.rules = s.lot, s, s.lot["rules"]
        sell, flat = 1 - lot["sell_percent"], np.where(s.stops, 0, lot["sell_flat"])
        price, level, own = lot["resale_mean"], lot["resale_level"], lot["own_share"]
        kept, _ = by_factor(s, s.kept)
        worth, factor = by_factor(s, price * s.kept + np.where(s.stops, mean(lot["way"]["money"]), 0) - flat - s.cost)
        c, v = winners_error(lot["rivals"] + 1)
        self.allowance = c * own * np.sqrt(level**2 * (kept**2).mean() + factor)
        narrow = 1 - own**2 * (1 - v)
        spread = np.sqrt(1 - (1 - narrow) * min(1, (level / lot["resale_sd"]) ** 2))
        sold = (price + spread * (s.price - price)) * s.kept
        self.selling = price * s.kept / sell * lot["sell_percent"] + flat
        self.left = sold + s.got - flat - s.cost - self.allowance - (worth - worth.mean()) * (1 - np.sqrt(narrow))
        self.labour, self.hours = s.labour.mean(), s.hours.mean()
        self.cash90, self.days90 = np.quantile(s.cash, 0.9), np.quantile(s.days, 0.9)
        self.outlay, self.capital = (self.selling + s.cost).mean(), s.growth.mean()

    def profits(self, total):
        return self.left - total * self.s.growth

    def holds(self, total):
        r, profit = self.rules, self.profits(total)
        m, tenth = profit.mean(), len(profit) // 10
        worst = np.partition(profit, tenth)[:tenth].mean()
        return (m >= r["min_profit"] and m >= r["min_margin"] * (self.outlay + total * self.capital)
                and (profit < 0).mean() <= r["max_loss_chance"] and -worst <= r["max_worst_tenth_loss"]
                and m + self.labour >= r["min_per_hour"] * self.hours and total + self.cash90 <= r["max_cash"] and self.days90 <= r["max_days"])

    def walk_away(self):
        """The last of all legal bids at which every rule holds; they are scanned, fees may fall."""
        best = None
        for bid, total in self.s.lot["bids"]:
            if self.holds(total):
                best = bid
        return best


def figures(b, total):
    s, profit = b.s, b.profits(total)
    tenth = len(profit) // 10
    return {"repair": s.repair.mean(), "hidden": s.hidden.mean(), "hours": s.hours.mean(), "your labor": s.labour.mean(), "days": s.days.mean(),
            "days, 90th": b.days90, "cash, 90th": b.cash90, "profit": profit.mean(), "profit, 10th": np.quantile(profit, 0.1),
            "profit, worst tenth": np.partition(profit, tenth)[:tenth].mean(), "loss chance": (profit < 0).mean(), "allowance": b.allowance, "stops": s.stops.mean()}


def pooled(parts):
    """Several sets of scenarios as one."""
    whole = object.__new__(Scenarios)
    whole.lot = parts[0].lot
    for name in ("factor", "cash", "labour", "hours", "repair", "hidden", "days", "cost", "price", "growth", "kept", "got", "stops"):
        setattr(whole, name, np.concatenate([getattr(p, name) for p in parts]))
    return whole


def main():
    with open(sys.argv[1], encoding="utf-8") as f:
        lot = json.load(f)
    n, batches, seeds = lot["scenarios"], int(sys.argv[2]), int(sys.argv[3])
    pert = Pert()
    times = []
    for seed in range(TIMINGS):
        start = time.perf_counter()
        small = Bid(Scenarios(lot, pert, n, seed))
        small.walk_away()
        times.append(time.perf_counter() - start)
    b = Bid(pooled([Scenarios(lot, pert, n, 100 + seed) for seed in range(batches)]))
    plain = []
    for seed in range(seeds):
        p = Bid(Scenarios(lot, pert, n, 1000 + seed, plain=True))
        f = figures(p, lot["total"])
        plain.append([f["profit"], f["profit, 10th"], f["profit, worst tenth"], p.walk_away() or 0])
    json.dump({"plain": plain, "seconds": min(times), "figures": figures(b, lot["total"]), "walk_away": b.walk_away(), "scenarios": n * batches}, sys.stdout)


if __name__ == "__main__":
    main()
