"""Whole flights once more, from the formulas alone (D2 and the assumptions of the studies), by SciPy's solve_ivp.

Reads one JSON document: the numbers of the sheet, the conditions, the first state, and a script of stages. Each stage
changes the law and lasts until all its conditions hold; when that is, is found here, not told. Writes the height (ft
above the aerodrome) and the indicated speed (kt) at each whole second, the ends of the stages, and the time it took.
"""
import json
import sys
import time
from math import atan2, cos, exp, hypot, pi, sin, sqrt, tan

from scipy.integrate import solve_ivp

G, R, FT, KT = 9.80665, 287.05287, 0.3048, 1852 / 3600
P0, T0 = 101325.0, 288.15
A0 = sqrt(1.4 * R * T0)
RHO0 = P0 / (R * T0)


def atmosphere(h, off):
    standard = T0 - 0.0065 * min(h, 11000.0)
    p = P0 * (standard / T0) ** (G / (R * 0.0065))
    if h > 11000:
        p *= exp(-G * (h - 11000) / (R * 216.65))
    real = standard + off
    return standard, p, p / (R * real), sqrt(1.4 * R * real)


def indicated(v, h, off):
    _, p, _, a = atmosphere(h, off)
    qc = p * ((1 + 0.2 * (v / a) ** 2) ** 3.5 - 1)
    return A0 * sqrt(5 * ((qc / P0 + 1) ** (2 / 7) - 1))


def true_speed(vc, h, off):
    _, p, _, a = atmosphere(h, off)
    qc = P0 * ((1 + 0.2 * (vc / A0) ** 2) ** 3.5 - 1)
    return a * sqrt(5 * ((qc / p + 1) ** (2 / 7) - 1))


class Flight:
    def __init__(self, d):
        self.s, self.c, self.law = d["sheet"], d["conditions"], {}
        self.m = self.c["weight"]
        self.elevation = self.c["elevation"] * FT

    def stall(self, detent):
        cl = self.s["detents"][detent]["clMax"]
        return sqrt(2 * self.m * G / (1.225 * self.s["area"] * cl)) / KT

    def named(self, text):
        """A speed by its name: VMM F6, V2 F12, VREF F35, each with what is added."""
        if isinstance(text, (int, float)):
            return float(text)
        name, detent, *more = text.split()
        base = {
            "VMM": lambda: 1.28 * self.stall(detent),
            "V2": lambda: max(1.13 * self.stall(detent), 1.10 * self.s["vmca"]),
            "VREF": lambda: max(1.23 * self.stall(detent), self.s["vmca"]),
        }[name]()
        return base + (float("".join(more)) if more else 0.0)

    def full(self, h, v, rating, a, standard, p):
        s = self.s
        n = s["engines"] - self.c["enginesOut"]
        sigma = (p / P0) * (T0 / standard)
        mach = v / a
        whole = n * s["static"] * sigma ** s["power"]
        if rating == "idle":
            return whole * (s["idle"][0] + s["idle"][1] * mach)
        lapse = sum(k * mach**i for i, k in enumerate(s["lapse"]))
        loss = 1 - s["loss"] * max(0.0, self.c["temperature"] - s["flat"])
        share = {"take-off": 1.0, "go-around": 1.0, "continuous": s["continuous"], "climb": self.climb(h / FT)}[rating]
        return whole * lapse * loss * share

    def climb(self, altitude):
        at, gives = self.s["climbAt"], self.s["climbGives"]
        if altitude <= at[0]:
            return gives[0]
        for i in range(len(at) - 1):
            if altitude <= at[i + 1]:
                return gives[i] + (gives[i + 1] - gives[i]) * (altitude - at[i]) / (at[i + 1] - at[i])
        return gives[-1]

    def slope(self, t, y):
        law, s, c = self.law, self.s, self.c
        h, v, w, thrust, _, heading, bank, _, _ = y
        standard, p, rho, a = atmosphere(h, c["temperature"])
        q = 0.5 * rho * v * v * s["area"]
        lift = self.m * G / cos(bank)
        detent = s["detents"][law["detent"]]
        cd = s["cd0"] + detent["cd0"] + (s["gear"] if law["gear"] else 0) + c["enginesOut"] * s["engineOut"]
        cd += detent["k"] * (lift / q) ** 2 + s["wave"][0] * max(0.0, v / a - s["wave"][1]) ** 2
        drag = cd * q
        shear = c["windGradient"] * KT / (1000 * FT)
        vc = indicated(v, h, c["temperature"])

        if law["thrust"] in ("steady", "govern"):
            wanted = 0.0
            if law["thrust"] == "govern":
                wanted = max(-1.2, min(1.2, (self.named(law["target"]) * KT - vc) / 6))
            goal = drag + self.m * (G * w / v - shear * w + wanted)
            goal = max(goal, self.full(h, v, "idle", a, standard, p))
            goal = min(goal, self.full(h, v, law["limit"], a, standard, p))
        else:
            goal = self.full(h, v, law["thrust"], a, standard, p)
        lag = law["lag"]
        now = thrust if lag else goal
        excess = (now - drag) / (self.m * G)

        flat = sqrt(max(v * v - w * w, 0.0))
        head = c["wind"] * KT + shear * (h - self.elevation)
        path = law["path"]
        if path == "speed":
            wanted = 0.0
            if law["target"] is not None:
                wanted = max(-1.2, min(1.2, (self.named(law["target"]) * KT - vc) / 4))
            rise = (G * excess - wanted) / (G / v - shear)
            rise = max(-0.218 * v, min(0.218 * v, rise))
        elif path == "share":
            whole = v * excess
            rise = min(max(0.35 * whole, min(500 * FT / 60, whole)), 0.218 * v)
        elif path == "capture":
            left = law["altitude"] * FT - h
            rise = (1 if left > 0 else -1) * sqrt(2 * 0.05 * G * abs(left))
        elif path == "level":
            left = law["altitude"] * FT - h
            most = sqrt(2 * 0.05 * G * abs(left))
            rise = max(-most, min(most, left / 5))
        elif path == "glide":
            rise = -(v - head) * tan(3 * pi / 180)
        else:
            raise ValueError(path)
        most = law["load"] * G
        # The vertical speed changes by at most the load factor; short of that it is what is wanted, here within two
        # thousandths of a second.
        bend = max(-most, min(most, (rise - w) / 0.002))

        east, north = flat * sin(heading) - head * sin(c["track"]), flat * cos(heading) - head * cos(c["track"])
        turn = roll = 0.0
        if law.get("heading") is not None:
            off = atan2(sin(law["heading"] - heading), cos(law["heading"] - heading))
            turn = G * tan(bank) / v
            roll = (max(-25 * pi / 180, min(25 * pi / 180, 1.5 * off)) - bank) / 1.2
        return [
            w,
            (now - drag) / self.m - G * w / v + shear * w,
            bend,
            (goal - thrust) / (lag[0] if goal > thrust else lag[1]) if lag else 0.0,
            hypot(east, north),
            turn,
            roll,
            east,
            north,
        ]

    def margin(self, condition, t, y, began):
        kind, value = condition[0], condition[1] if len(condition) > 1 else None
        if kind == "time":
            return t - value
        if kind == "for":
            return t - began - value
        h = (y[0] - self.elevation) / FT
        if kind == "above":
            return h - value
        if kind == "below":
            return value - h
        if kind == "faster":
            return indicated(y[1], y[0], self.c["temperature"]) / KT - self.named(value)
        if kind == "slower":
            return self.named(value) - indicated(y[1], y[0], self.c["temperature"]) / KT
        if kind == "capture":
            left = value * FT - y[0]
            return min(y[2] ** 2 / (2 * 0.05 * G) - abs(left), (1 if left > 0 else -1) * y[2] - 2.0)
        raise ValueError(kind)


def fly(d):
    f = Flight(d)
    start = d["start"]
    h = f.elevation + start["height"] * FT
    v = true_speed(f.named(start["speed"]) * KT, h, f.c["temperature"])
    head = f.c["wind"] * KT + f.c["windGradient"] * KT / (1000 * FT) * start["height"] * FT
    w = -(v - head) * tan(3 * pi / 180) if start["rate"] == "glide" else start["rate"] * FT / 60
    y = [h, v, w, 0.0, 0.0, f.c["track"], 0.0, 0.0, 0.0]
    t, whole, rows, ends, count = 0.0, 0, [], [], 0
    for number, stage in enumerate(d["stages"]):
        f.law.update(stage["law"])
        if number == 0:
            standard, p, rho, a = atmosphere(h, f.c["temperature"])
            if start["timesIdle"] is not None:
                y[3] = start["timesIdle"] * f.full(h, v, "idle", a, standard, p)
            elif f.law["lag"]:
                # The engines begin where the law has them.
                lag, f.law["lag"] = f.law["lag"], None
                dv = f.slope(0, y)[1]
                f.law["lag"] = lag
                y[3] = 0.0
                base = f.slope(0, y)[1]
                y[3] = (dv - base) * f.m

        began = t

        def over(t, y, stage=stage, began=began):
            return min(f.margin(each, t, y, began) for each in stage["until"])

        over.terminal, over.direction = True, 1
        if over(t, y) < 0:
            got = solve_ivp(
                f.slope, (t, t + 900), y, method=d["method"], rtol=d["rtol"], atol=d["atol"],
                events=over, dense_output=True, max_step=d["maxStep"],
            )
            if got.status != 1:
                raise RuntimeError(f"stage {number} does not end: {got.message}")
            count += got.nfev
            t, y = float(got.t[-1]), [float(x) for x in got.y[:, -1]]
            while whole <= t:
                at = got.sol(whole)
                rows.append([whole, (at[0] - f.elevation) / FT, indicated(at[1], at[0], f.c["temperature"]) / KT,
                             at[4] / 1852, at[7] / 1852, at[8] / 1852])
                whole += 1
        ends.append(t)
    return rows, ends, count


if __name__ == "__main__":
    document = json.load(sys.stdin)
    answers = []
    for one in document:
        before = time.perf_counter()
        rows, ends, count = fly(one)
        answers.append({"rows": rows, "ends": ends, "seconds": time.perf_counter() - before, "evaluations": count})
    json.dump(answers, sys.stdout)
