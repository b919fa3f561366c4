"""A welded frame as thin plates, for CalculiX (ccx): made from the order's and the frame's
files alone, nothing of the program. Millimetres, newtons, megapascals. x rearward from the
track's front end, y to the right, z up from the mains' tops.

Every channel is three plates at mid thickness (mean flange thickness); plates that are
welded share nodes where they meet. The tongue lies under the mains: its nodes under the
main's and the front member's flange are held to them where the fillets are."""
import math
import pathlib
import re
import subprocess

import yaml

inch, pound, gravity = 25.4, 0.45359237, 9.80665
steel = dict(e=29000 * 6.894757, nu=0.3, rho=7.85e-9)  # tonnes/mm3


def length(text):
    """'4-3/4 in', '920 mm' or '25 deg' as its file has it."""
    if isinstance(text, (int, float)):
        return float(text)
    m = re.fullmatch(r"\s*(-?)(?:([\d.]+)-)?([\d.]+)(?:/(\d+))?\s*(in|ft|mm|lb|kg|deg)?\s*", text)
    if not m:
        raise ValueError(f"no figure: {text}")
    value = float(m[3]) / float(m[4] or 1) + float(m[2] or 0)
    unit = {"in": inch, "ft": 12 * inch, "mm": 1, "lb": pound, "kg": 1, "deg": math.pi / 180, None: 1}[m[5]]
    return (-1 if m[1] else 1) * value * unit


def channels(folder):
    sections = yaml.safe_load((folder / "catalog/channels.yaml").read_text())["sections"]
    return {s["name"]: {k: length(s[k]) for k in ("depth", "flange", "web", "flange_thickness")} for s in sections}


def on_bunks(bunks, middle, span, weight):
    """A stiff straight log on equal springs: {place: force}."""
    under = [x for x in bunks if abs(x - middle) <= span / 2]
    mean = sum(under) / len(under)
    squares = sum((x - mean) ** 2 for x in under)
    return {x: weight * (1 / len(under) + (middle - mean) * (x - mean) / squares) for x in under}


class Mesh:
    """Quadrilaterals with shared nodes, a thickness each."""

    def __init__(self):
        self.nodes, self.quads = {}, []  # place -> number; (thickness, numbers, name)

    def node(self, p):
        key = tuple(round(c, 2) for c in p)
        return self.nodes.setdefault(key, len(self.nodes) + 1)

    def plate(self, place, us, vs, thickness, name):
        """place(u, v) over the grid of us and vs."""
        for u0, u1 in zip(us, us[1:]):
            for v0, v1 in zip(vs, vs[1:]):
                self.quads.append((thickness, [self.node(place(u, v)) for u, v in
                                               ((u0, v0), (u1, v0), (u1, v1), (u0, v1))], name))

    def near(self, p, names=None):
        used = {n for _, four, name in self.quads if names is None or name in names for n in four}
        return min(((sum((a - b) ** 2 for a, b in zip(q, p)), n) for q, n in self.nodes.items() if n in used))[1]


def grid(places, step):
    """Through all these places, no further apart than step."""
    out = []
    places = sorted(set(round(p, 3) for p in places))
    places = [p for i, p in enumerate(places) if i == 0 or p - places[i - 1] > 0.5]
    for a, b in zip(places, places[1:]):
        n = max(1, math.ceil((b - a) / step))
        out += [a + (b - a) * i / n for i in range(n)]
    return out + [places[-1]]


class Frame:
    def __init__(self, params, order_name, step=25):
        order = yaml.safe_load((params / f"orders/{order_name}.yaml").read_text())
        frame = yaml.safe_load((params / "orders" / order["frame"]).read_text())
        kit = yaml.safe_load((params / "orders" / order["kit"]).read_text())
        for change in order.get("overrides", []):
            at, keys = {"kit": kit, "frame": frame}.get(change["key"].split(".")[0]), change["key"].split(".")[1:]
            for k in keys[:-1]:
                at = at[k]
            at[keys[-1]] = change["value"]
        self.params = params
        self.order, self.frame, self.kit, self.catalog = order, frame, kit, channels(params)
        track = order["track"]
        self.rail = length(track["rail_length"])
        self.sections = kit["rail"]["base_sections"] + track["extension_count"]
        self.total = self.rail * self.sections
        self.web = length(frame["main"]["spacing"]) / 2  # back of a main's web
        self.main = self.catalog[frame["main"]["section"]]
        self.jacks = [length(x) for x in order["jacks"]]
        self.axle = length(order["axle"]["position"])
        count, spread = frame["axle"]["count"], length(frame["axle"].get("spread", 0))
        spring = length(frame["axle"]["spring_length"])
        self.hangers = [self.axle + (i - (count - 1) / 2) * spread + s * spring for i in range(count) for s in (-0.5, 0.5)]
        m = kit["mounting"]
        offset, pitch = length(m["end_offset"]), length(m["max_pitch"])
        n = math.ceil((self.rail - 2 * offset) / pitch - 1e-9)
        self.tabs = [s * self.rail + offset + i * (self.rail - 2 * offset) / n for s in range(self.sections) for i in range(n + 1)]
        self.tab_line = length(kit["gauge"]) / 2 - length(m["line"])  # holes from the centre line
        bunk = kit["bunk"]
        own, every = length(bunk["outer_set"]), length(track["bunk_pitch"])
        self.bunks = sorted({round(s * self.rail + x, 3) for s in range(self.sections) for x in
                             [own, *[i * every for i in range(1, 99) if i * every <= self.rail - every / 2]]} |
                            {round(self.total - own, 3)})
        self.mesh = Mesh()
        self.ties = []  # (node, [(node, part)], directions): moves as the others' sum does
        self.build(step)

    # Levels of a channel's mid surfaces below its top, and half its flange plates' reach.
    @staticmethod
    def levels(s, top=0):
        h = s["flange_thickness"] / 2
        return top - h, top - s["depth"] + h

    def build(self, step):
        s, f, mesh = self.main, self.frame, self.mesh
        cross = self.catalog[f["cross_member"]["section"]]
        top, low = self.levels(s)
        c_top, c_low = self.levels(cross, -s["depth"] / 2 + cross["depth"] / 2)
        most = length(f["cross_member"]["max_spacing"])
        n = math.ceil(self.total / most - 1e-9) - 1
        self.crosses = [self.total * (i + 1) / (n + 1) for i in range(n)]
        zs = [low, c_low, -s["depth"] / 2, c_top, top]
        half_tab = length(f["tabs"]["length"]) / 2
        stops = [0, self.total, *self.jacks, *self.hangers, *self.crosses]
        for t in self.tabs:
            stops += [t - half_tab, t, t + half_tab]
        xs = grid([x for x in stops if 0 <= x <= self.total], step)
        y = self.web - s["web"] / 2
        toe = self.web - s["flange"]
        ys = [toe, (toe + y) / 2, y]
        for side in (-1, 1):
            mesh.plate(lambda x, z: (x, side * y, z), xs, zs, s["web"], "main web")
            for z in (top, low):
                mesh.plate(lambda x, v: (x, side * v, z), xs, ys, s["flange_thickness"], "main flange")
        across = grid([-y, -toe, -ys[1], 0, ys[1], toe, y], 1.5 * step)
        for x in self.crosses:
            mesh.plate(lambda v, z: (x, v, z), across, [c_low, -s["depth"] / 2, c_top], cross["web"], "cross web")
            # Its flanges stop short of the mains: only the web is welded.
            free = [v for v in across if abs(v) < toe + 1]
            free = free if len(free) > 1 else across[1:-1]
            for z in (c_low, c_top):
                mesh.plate(lambda v, u: (x - u, v, z), free, [0, cross["flange"] / 2, cross["flange"]],
                           cross["flange_thickness"], "cross flange")
        for x, way, key in ((0, -1, "front_member"), (self.total, 1, "rear_member")):
            e = self.catalog[f[key]["section"]]
            mesh.plate(lambda v, z: (x, v, z), across, zs, e["web"], "end web")
            for z in (low, top):
                mesh.plate(lambda v, u: (x + way * u, v, z), across, [0, e["flange"] / 2, e["flange"]],
                           e["flange_thickness"], "end flange")
        self.zs, self.xs, self.y, self.toe, self.top, self.low = zs, xs, y, toe, top, low
        self.build_tabs()
        self.build_tongue(step)

    def build_tabs(self):
        """Plate tabs stand out over the web to their hole; a clip's leg does, at its heel."""
        t, mesh = self.frame["tabs"], self.mesh
        half = length(t["length"]) / 2
        thick = length(t["plate"]["plate_thickness"]) if t["style"] == "plate" else 0.25 * inch
        for side in (-1, 1):
            for at in self.tabs:
                xs = [x for x in self.xs if at - half - 0.01 <= x <= at + half + 0.01]
                mesh.plate(lambda x, v: (x, side * v, self.top), xs, [self.y, self.web + 0.1, self.tab_line], thick, "tab")
                if t["style"] == "plate":
                    mesh.plate(lambda x, v: (x, side * v, self.top), xs, [self.toe, (self.toe + self.y) / 2, self.y], thick, "tab")

    def build_tongue(self, step):
        t, mesh = self.frame["tongue"], self.mesh
        s = self.catalog[t["section"]]
        ahead, back, angle = length(t["length"]), length(t["back"]), length(t["angle"])
        tan, cos = math.tan(angle), math.cos(angle)
        # Its flange laid against the mains' from below: at their mid level less half of both.
        top = -self.main["depth"] - s["flange_thickness"] / 2
        low = top - s["depth"] + s["flange_thickness"]
        web0, toe = s["flange"] / cos + 3, s["flange"] / cos
        jack, half = length(self.frame["tongue_jack"]["behind_front"]) - ahead, length(self.frame["tongue_jack"]["plate_length"]) / 2
        xs = grid([-ahead, jack - half, jack, jack + half, -self.main["flange"], 0, back], step / 2)
        self.tongue = dict(ahead=ahead, top=top, low=low, web=lambda x: web0 + (x + ahead) * tan, toe=toe, s=s, xs=xs)
        for side in (-1, 1):
            at = lambda x, u: side * (web0 - s["web"] / 2 + (x + ahead) * tan - u)
            mesh.plate(lambda x, z: (x, at(x, 0), z), xs, [low, (low + top) / 2, top], s["web"], "tongue web")
            for z in (low, top):
                mesh.plate(lambda x, u: (x, at(x, u), z), xs, [0, toe / 2, toe], s["flange_thickness"], "tongue flange")
        # The coupler's box on their front ends, as far as the ball; the jack's plate between them.
        steps = [toe, toe / 2, 0]
        width = lambda x: web0 - s["web"] / 2 + (x + ahead) * tan
        ys = lambda x: [-width(x) + u for u in reversed(steps)] + [0] + [width(x) - u for u in steps]
        ball = -ahead - length(self.frame["coupler"]["ball_ahead"])
        for z in (low, top):
            mesh.plate(lambda x, i: (x, ys(-ahead)[i], z), [ball, -ahead], range(7), 8, "coupler")
        for side in (-1, 1):
            mesh.plate(lambda x, z: (x, side * width(-ahead), z), [ball, -ahead], [low, (low + top) / 2, top], 8, "coupler")
        j = self.frame["tongue_jack"]
        jack, half = length(j["behind_front"]) - ahead, length(j["plate_length"]) / 2
        mesh.plate(lambda x, i: (x, ys(x)[i], top), [x for x in xs if jack - half - 1 <= x <= jack + half + 1], range(7),
                   length(j["plate_thickness"]), "tongue jack plate")
        self.ball = [mesh.node((ball, 0, low))]
        # Each node of its top flange under a flange of the main or of the front member, where a
        # fillet runs: the web's edge and the toe's.
        for side in (-1, 1):
            for x in xs:
                for u in (0, toe):
                    v = web0 - s["web"] / 2 + (x + ahead) * tan - u
                    under_nose = -self.main["flange"] - 0.01 <= x <= 0.01
                    under_main = x > 0.01 and self.toe - 0.01 <= v <= self.y + 0.01
                    if under_nose or under_main:
                        self.tie((x, side * v, top), ("end flange",) if under_nose else ("main flange",))

    def tie(self, p, names):
        """A tongue's node to the plate over it, by the corners of the plate's element there."""
        place = {n: q for q, n in self.mesh.nodes.items()}
        for _, four, name in self.mesh.quads:
            q = [place[n] for n in four]
            if name not in names or abs(q[0][2] - self.low) > 0.1 or max(c[2] for c in q) - min(c[2] for c in q) > 0.1:
                continue
            x0, x1 = min(c[0] for c in q), max(c[0] for c in q)
            y0, y1 = min(c[1] for c in q), max(c[1] for c in q)
            if not (x0 - 0.02 <= p[0] <= x1 + 0.02 and y0 - 0.02 <= p[1] <= y1 + 0.02):
                continue
            a, b = (p[0] - x0) / (x1 - x0), (p[1] - y0) / (y1 - y0)
            parts = [(n, (a if c[0] > (x0 + x1) / 2 else 1 - a) * (b if c[1] > (y0 + y1) / 2 else 1 - b)) for n, c in zip(four, q)]
            self.ties.append((self.mesh.node(p), parts, (1, 2, 3)))
            return
        raise ValueError(f"nothing over the tongue at {p}")


class Bed(Frame):
    """The frame with what it carries: loads on the tabs' holes and on the mains."""

    def __init__(self, params, order_name, step=25):
        super().__init__(params, order_name, step)
        self.loads = []  # (node, direction, force)
        self.gauge = length(self.kit["gauge"])

    def on_tabs(self, x, y, weight):
        """kg on the rails at x, y: to each rail by the lever, to its two nearest tabs the same way."""
        tabs = [t for t in self.tabs if int(t // self.rail) == min(int(x // self.rail), self.sections - 1)]
        before = max([t for t in tabs if t <= x], default=tabs[0])
        after = min([t for t in tabs if t > before], default=tabs[-1])
        if after == before:
            before = tabs[-2]
        part = (x - before) / (after - before)
        for side in (-1, 1):
            for at, share in ((before, 1 - part), (after, part)):
                node = self.mesh.near((at, side * self.tab_line, self.top), ("tab",))
                self.loads.append((node, 3, -weight * gravity * share * (0.5 + side * y / self.gauge)))

    def on_mains(self, x, weight):
        for side in (-1, 1):
            self.loads.append((self.mesh.near((x, side * self.y, -self.main["depth"] / 2), ("main web",)), 3, -weight * gravity / 2))

    def put_track_on(self):
        """Rails and bunks by their steel; 57 lb of gussets, stops and clamps half way."""
        per_mm = 7850e-9
        r, b = self.kit["rail"], self.kit["bunk"]
        angle = lambda p: length(p["thickness"]) * (length(p["flat_leg"]) + length(p["standing_leg"]) - length(p["thickness"]))
        for t in self.tabs:
            self.on_tabs(t, 0, 2 * angle(r) * per_mm * self.total / len(self.tabs))
        for x in self.bunks:
            self.on_tabs(x, 0, angle(b) * per_mm * (self.gauge - 38) + 0.2)
        self.on_tabs(self.total / 2 + 100, 0, 57 * pound)

    def put_head_on(self, x):
        h = self.kit["head"]
        for wheel in (-0.5, 0.5):
            self.on_tabs(x + wheel * length(h["wheel_base"]), length(h["mass_y"]), length(h["mass"]) / 2)

    def put_log_on(self, middle):
        log, stop = self.order["work"]["log"], self.kit["log_stop"]
        d, l = length(log["diameter"]), length(log["length"])
        for s in yaml.safe_load((self.params / "catalog/species.yaml").read_text())["species"]:
            if s["name"] == log["species"]:
                # Of its kind the heaviest: a fifth more than the table says (FPL Technical Note 218).
                density = 1.2 * s["green_lb_per_ft3"] * pound / 0.3048 ** 3 * 1e-9
        weight = math.pi / 4 * d * d * l * density
        y = -length(stop["from_centre"]) + length(stop["width"]) / 2 + d / 2
        for x, force in on_bunks(self.bunks, middle, l, weight).items():
            self.on_tabs(x, y, force)

    def put_bought_on(self):
        """Jacks with their plates; coupler and tongue jack."""
        j, f = self.frame["jack"], self.frame
        plate = length(j["plate_length"]) * length(j["plate_height"]) * length(j["plate_thickness"]) * 7850e-9
        for x in self.jacks:
            self.on_mains(x, 2 * (length(j["mass"]) + plate + 0.5))
        ahead = self.tongue["ahead"]
        self.loads.append((self.mesh.near((-ahead, 0, self.tongue["top"]), ("coupler",)), 3, -length(f["coupler"]["mass"]) * gravity))
        at = self.mesh.near((length(f["tongue_jack"]["behind_front"]) - ahead, 0, self.tongue["top"]), ("tongue jack plate",))
        self.loads.append((at, 3, -length(f["tongue_jack"]["mass"]) * gravity))

    def hang_axles(self):
        a = self.frame["axle"]
        for x in self.hangers:
            self.on_mains(x, a["count"] * (length(a["mass"]) + 2 * length(a["wheel_mass"])) / len(self.hangers))

    def stand_on(self, places):
        """The mains held up in the middle of their webs at these places; {node: directions}."""
        held = {self.web_node(side, x): [3] for x in places for side in (-1, 1)}
        held[self.web_node(-1, places[0])] = [1, 2, 3]
        held[self.web_node(-1, places[-1])] = [2, 3]
        return held

    def stand_on_springs(self):
        """Held at the ball; the ends of one side's springs carry alike, as levers that turn on their
        middles (an equaliser between two of them too): what they move adds up to nothing."""
        for side in (-1, 1):
            first, *others = [self.web_node(side, x) for x in self.hangers]
            self.ties.append((first, [(n, -1.0) for n in others], (3,)))
        return {self.ball[0]: [2, 3], self.web_node(-1, self.total): [1, 2]}

    def web_node(self, side, x):
        return self.mesh.near((x, side * self.y, -self.main["depth"] / 2), ("main web",))

    def bent(self, stresses, name, side, x, z, reach=None):
        """Mean stress along the bed in the plate of that name near x at that level: MPa."""
        place = {n: p for p, n in self.mesh.nodes.items()}
        found = []
        for i, (_, four, called) in enumerate(self.mesh.quads):
            q = [place[n] for n in four]
            mean = [sum(c[d] for c in q) / 4 for d in range(3)]
            if called == name and mean[1] * side > 0 and abs(mean[0] - x) <= (reach or 13) and abs(mean[2] - z) < 0.5:
                points = stresses[i + 1]
                found.append(sum(p[0] for p in points) / len(points))
        if not found:
            raise ValueError(f"no {name} near {x}")
        return found


def solve(folder, mesh, ties, held, loads, g):
    """Displacements {node: (x, y, z)}, forces on held nodes, {element: stresses at its points}.
    `held`: {node: directions}; `loads`: [(node, direction, force)]; `g`: weights of the steel at work."""
    folder = pathlib.Path(folder)
    folder.mkdir(parents=True, exist_ok=True)
    lines = ["*NODE,NSET=NALL"]
    lines += [f"{n},{p[0]},{p[1]},{p[2]}" for p, n in sorted(mesh.nodes.items(), key=lambda i: i[1])]
    sets = {}
    for i, (thick, four, name) in enumerate(mesh.quads):
        sets.setdefault((round(thick, 4), name), []).append((i + 1, four))
    names = {}
    for k, (key, members) in enumerate(sets.items()):
        names[key] = f"E{k}"
        lines.append(f"*ELEMENT,TYPE=S4,ELSET=E{k}")
        lines += [f"{i}," + ",".join(map(str, four)) for i, four in members]
    lines += ["*MATERIAL,NAME=STEEL", "*ELASTIC", f"{steel['e']},{steel['nu']}", "*DENSITY", f"{steel['rho']}"]
    for (thick, _), name in names.items():
        lines += [f"*SHELL SECTION,ELSET={name},MATERIAL=STEEL", f"{thick}"]
    for node, parts, directions in ties:
        parts = [(n, w) for n, w in parts if abs(w) > 1e-6]
        for d in directions:
            lines += ["*EQUATION", str(1 + len(parts))]
            terms = [(node, d, 1.0)] + [(n, d, -w) for n, w in parts]
            for i in range(0, len(terms), 4):
                lines.append(",".join(f"{n},{d_},{w:.6f}" for n, d_, w in terms[i:i + 4]))
    lines.append("*BOUNDARY")
    lines += [f"{n},{d},{d}" for n, dirs in held.items() for d in dirs]
    lines.append("*NSET,NSET=HELD")
    lines += [f"{n}," for n in held]
    lines += ["*STEP", "*STATIC", "*DLOAD"]
    lines += [f"{name},GRAV,{g * gravity * 1000},0,0,-1" for name in names.values()] if g else []
    lines.append("*CLOAD")
    lines += [f"{n},{d},{force:.6f}" for n, d, force in loads]
    lines += ["*NODE PRINT,NSET=NALL", "U", "*NODE PRINT,NSET=HELD", "RF"]
    for name in names.values():
        lines += [f"*EL PRINT,ELSET={name},GLOBAL=YES", "S"]
    lines.append("*END STEP")
    (folder / "frame.inp").write_text("\n".join(lines) + "\n")
    ran = subprocess.run(["ccx", "frame"], cwd=folder, capture_output=True, text=True)
    if ran.returncode or "ERROR" in ran.stdout:
        raise RuntimeError("ccx: " + ran.stdout[-1500:])
    moved, forces, stresses, block = {}, {}, {}, None
    for line in (folder / "frame.dat").read_text().split("\n"):
        if "displacements" in line:
            block = moved
        elif "forces" in line:
            block = forces
        elif "stresses" in line:
            block = stresses
        words = line.split()
        if block is None or not words or not re.fullmatch(r"\d+", words[0]):
            continue
        if block is stresses:
            stresses.setdefault(int(words[0]), []).append([float(w) for w in words[2:8]])
        else:
            block[int(words[0])] = [float(w) for w in words[1:]]
    if max(abs(c) for m in moved.values() for c in m) > 1000:
        raise RuntimeError("a piece of the model hangs on nothing")
    return moved, forces, stresses


def one_tab(folder, frame, down, further):
    """A piece of main with one tab under a load so far outside its hole, where the wheels ride,
    fine enough to see the plate bend: of the tab, the mean and the most at the web's back (a clip's heel), and of the main's web beside
    it the most, all of bending across the bed, at the plates' faces: MPa."""
    t, s, mesh = frame.frame["tabs"], frame.main, Mesh()
    half, reach = length(t["length"]) / 2, 12 * inch
    top, low = frame.levels(s)
    y, toe, line = frame.y, frame.toe, round(frame.tab_line + further, 1)
    xs = grid([-reach, -4 * half, -half, 0, half, 4 * half, reach], half / 6)
    inner = [x for x in xs if abs(x) <= half + 0.01]
    plate = t["style"] == "plate"
    inboard = frame.web - (length(t["plate"]["inboard"]) if plate else s["flange"])
    zs = grid([low, -s["depth"] / 2, -1.5 * inch, top], half / 4)
    ys = grid([toe, inboard, y], 5)
    mesh.plate(lambda x, z: (x, y, z), xs, zs, s["web"], "web")
    for z in (top, low):
        mesh.plate(lambda x, v: (x, v, z), xs, ys, s["flange_thickness"], "flange")
    if plate:
        thick = length(t["plate"]["plate_thickness"])
        level = thick / 2
        on = [v for v in ys if v >= inboard - 0.01]
        mesh.plate(lambda x, v: (x, v, level), inner, on + grid([y, frame.web, line], 5)[1:], thick, "tab")
        for x in (-half, half):
            mesh.plate(lambda v, z: (x, v, z), on, [top, level], length(t["weld_leg"]), "fillet")
        heel = frame.web
    else:
        thick = 0.25 * inch
        level = length(t["clip"]["standoff"]) - thick / 2
        at = round(frame.web + thick / 2, 1)
        foot = [z for z in zs if z >= level + thick / 2 - 3 * inch]
        mesh.plate(lambda x, z: (x, at, z), inner, foot + [level], thick, "leg")
        mesh.plate(lambda x, v: (x, v, level), inner, grid([at, frame.web + thick, line], 5), thick, "tab")
        for x in (-half, half):
            mesh.plate(lambda v, z: (x, v, z), [y, at], foot, length(t["weld_leg"]), "fillet")
        heel = frame.web + thick
    held = {n: [1, 2, 3] for p, n in mesh.nodes.items() if abs(abs(p[0]) - reach) < 0.1}
    _, _, stresses = solve(folder, mesh, [], held, [(mesh.near((0, line, level), ("tab",)), 3, -down)], 0)
    place = {n: p for p, n in mesh.nodes.items()}

    def face(points, d):
        """At the faces, from points at 1 / sqrt 3 of half the thickness."""
        a = sum(p[d] for p in points[:4]) / 4, sum(p[d] for p in points[4:]) / 4
        return max(abs((a[0] + a[1]) / 2 + way * math.sqrt(3) * (a[0] - a[1]) / 2) for way in (-1, 1))

    tab, web = [], []
    for i, (_, four, name) in enumerate(mesh.quads):
        q = [place[n] for n in four]
        mean = [sum(c[d] for c in q) / 4 for d in range(3)]
        if name == "tab" and min(c[1] for c in q) - 0.1 <= heel <= max(c[1] for c in q) - 0.1:
            tab.append((face(stresses[i + 1], 1), max(c[1] for c in q) - min(c[1] for c in q), mean[1]))
        if name == "web" and abs(mean[0]) < 3 * half:
            web.append(face(stresses[i + 1], 2))
    # Bending falls in a line to nothing at the load: from the element's middle back to the heel.
    back = [s_ * (line - heel) / (line - m) for s_, _, m in tab]
    return sum(back) / len(back), max(back), max(web)
