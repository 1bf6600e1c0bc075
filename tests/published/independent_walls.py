"""The walls of independent_walls.json in a general-purpose finite-element library.

Run:  apt-get install python3-dolfinx
      /usr/bin/python3 tests/published/independent_walls.py            prints the table
      ... --write        rewrites independent_walls_recorded.json, which independent_walls_test.cpp reads
      ... --wall NAME    that wall alone (may be repeated); with --write the others stay as recorded
      ... --size MM      largest element, 40 mm unless given; each wall is run at twice the size too
Recorded with 25 mm for "openings" and "slack needle", 40 mm for the others.

Shares nothing with this project but the statement of the problem: a grid of its own, 9-node
(biquadratic) quadrilaterals, or 6-node triangles where the top slants; masonry and needles are given
as an energy, and the library differentiates it twice for forces and tangent. A needle's spring pushes
where the wall has come down past its slack, energy K g^2 / 2 of the overlap g: no penalty, no
multiplier. N, mm, N/mm2.
"""

import argparse
import datetime
import json
import pathlib
import sys

import numpy as np
import ufl
from dolfinx import __version__, fem, mesh
from dolfinx.fem import petsc as fem_petsc
from mpi4py import MPI
from petsc4py import PETSc

HERE = pathlib.Path(__file__).parent
PROBLEM, RECORDED = HERE / "independent_walls.json", HERE / "independent_walls_recorded.json"
RESIDUAL = 1e-4  # part of the elastic energy that open cracks keep
QUADRATURE = {"quadrature_degree": 5}
NEAR = 1e-6


def grid_lines(features, size):
    """Every feature, and equal steps of at most `size` between neighbours."""
    features = sorted(set(features))
    steps = [np.linspace(a, b, int(np.ceil((b - a) / size - NEAR)) + 1)[:-1] for a, b in zip(features, features[1:])]
    return np.concatenate(steps + [features[-1:]])


class Outline:
    """A level top, or two equal slopes that meet over the middle."""

    def __init__(self, wall):
        self.length, top = wall["length"], wall["top"]
        self.eaves, self.apex = top[0][1], max(y for _, y in top)
        gable = len(top) == 3 and top[1][0] == self.length / 2
        assert top[-1][1] == self.eaves and (len(top) == 2 or gable), "an outline that the grid cannot follow"
        self.slants = self.apex > self.eaves
        self.slope = (self.apex - self.eaves) / (self.length / 2)

    def top(self, x):
        return self.eaves + self.slope * np.minimum(x, self.length - x)

    def where(self, y):
        """The left place at which the top is at `y`."""
        return (y - self.eaves) / self.slope


def lintel_box(opening):
    """left, right, bottom, top"""
    lintel, head = opening["lintel"], opening["sill"] + opening["height"]
    return (opening["left"] - lintel["bearing"], opening["left"] + opening["width"] + lintel["bearing"],
            head, head + lintel["depth"])


def bearing_of(item):
    return item["x"] - item["bearing"] / 2, item["x"] + item["bearing"] / 2


def features_of(wall, outline):
    cut = wall["cut"]
    xs, ys = [0.0, wall["length"], cut["left"], cut["right"]], [0.0, outline.eaves, cut["soffit"]]
    for opening in wall["openings"]:
        xs += [opening["left"], opening["left"] + opening["width"]]
        ys += [opening["sill"], opening["sill"] + opening["height"]]
        if "lintel" in opening:
            box = lintel_box(opening)
            xs, ys = xs + list(box[:2]), ys + list(box[2:])
    for item in wall["needles"] + wall["point_loads"]:
        xs += bearing_of(item)
    for load in wall["line_loads"]:
        xs += [load["from"], load["to"]]
    ys += [load["level"] for load in wall["line_loads"] + wall["point_loads"] if load["level"] != "top"]
    return xs, ys


def grid_of(wall, outline, size):
    xs, ys = features_of(wall, outline)
    if not outline.slants:
        return grid_lines(xs, size), grid_lines(ys, size)
    # The slopes run along the diagonals of the grid: a level line wherever an upright meets the top.
    middle = wall["length"] / 2
    half = [min(x, wall["length"] - x) for x in xs] + [outline.where(y) for y in ys if y > outline.eaves]
    left = grid_lines(half + [middle], size)
    below = grid_lines([y for y in ys if y <= outline.eaves], size)
    return np.concatenate([left, wall["length"] - left[-2::-1]]), np.concatenate([below, outline.top(left[1:])])


def solid(wall, outline, x, y):
    cut = wall["cut"]
    if (cut["left"] < x < cut["right"] and y < cut["soffit"]) or y > outline.top(x):
        return False
    return not any(o["left"] < x < o["left"] + o["width"] and o["sill"] < y < o["sill"] + o["height"]
                   for o in wall["openings"])


def cells_of(i, j, xs, outline):
    """Corners of the cell right of line i and above line j, whole or in two triangles."""
    a, b, c, d = (i, j), (i + 1, j), (i, j + 1), (i + 1, j + 1)
    if not outline.slants:
        return [[a, b, c, d]]
    return [[a, b, d], [a, d, c]] if xs[i] < outline.length / 2 - NEAR else [[a, b, c], [b, d, c]]


def wall_mesh(wall, outline, size):
    xs, ys = grid_of(wall, outline, size)
    number, cells = {}, []
    for j in range(len(ys) - 1):
        for i in range(len(xs) - 1):
            for corners in cells_of(i, j, xs, outline):
                x, y = np.mean([[xs[m], ys[n]] for m, n in corners], axis=0)
                if solid(wall, outline, x, y):
                    cells.append([number.setdefault(corner, len(number)) for corner in corners])
    points = np.array([[xs[i], ys[j]] for i, j in number])
    shape = ufl.triangle if outline.slants else ufl.quadrilateral
    return mesh.create_mesh(MPI.COMM_SELF, np.array(cells, dtype=np.int64), points,
                            ufl.Mesh(ufl.VectorElement("Lagrange", shape, 1)))


def tags_of(domain, dimension, places, rest=None):
    """Tags 1, 2, ... for the entities in each of `places`; `rest` for all others."""
    domain.topology.create_connectivity(dimension, 2)
    domain.topology.create_connectivity(2, dimension)
    count = domain.topology.index_map(dimension).size_local
    tags = np.full(count, -1 if rest is None else rest, dtype=np.int32)
    for tag, place in enumerate(places, start=1):
        tags[mesh.locate_entities(domain, dimension, place)] = tag
    chosen = np.flatnonzero(tags >= 0).astype(np.int32)
    return mesh.meshtags(domain, dimension, chosen, tags[chosen])


def box(left, right, bottom, top):
    return lambda x: ((x[0] > left - NEAR) & (x[0] < right + NEAR) & (x[1] > bottom - NEAR) & (x[1] < top + NEAR))


def stretches(loads):
    """(from, to, force per length) without overlap, of loads that may overlap."""
    ends = sorted({x for load in loads for x in load[:2]})
    sums = [(a, b, sum(f for left, right, f in loads if left < (a + b) / 2 < right)) for a, b in zip(ends, ends[1:])]
    return [stretch for stretch in sums if stretch[2] > 0]


def loads_of(wall, outline):
    """(place, force per length along x) of all loads, each place once."""
    by_level = {}
    for load in wall["line_loads"]:
        by_level.setdefault(load["level"], []).append((load["from"], load["to"], load["force"]))
    for load in wall["point_loads"]:
        by_level.setdefault(load["level"], []).append((*bearing_of(load), load["force"] / load["bearing"]))
    placed = []
    for level, loads in by_level.items():
        for left, right, force in stretches(loads):
            def on_top(x, left=left, right=right):
                return np.isclose(x[1], outline.top(x[0])) & (x[0] > left - NEAR) & (x[0] < right + NEAR)
            placed.append((on_top if level == "top" else box(left, right, level, level), force))
    return placed


def elastic_energy(a, b, c, E, nu):
    return E / (2 * (1 - nu**2)) * (a**2 + b**2 + 2 * nu * a * b) + E / (1 + nu) * c**2


def energy_density(strain, material, tensile_strength):
    E, nu = material["E"], material["nu"]
    exx, eyy, exy = strain[0, 0], strain[1, 1], strain[0, 1]
    elastic = elastic_energy(exx, eyy, exy, E, nu)
    if tensile_strength is None:
        return elastic
    shift = tensile_strength * (1 - nu) / E
    mean = (exx + eyy) / 2 - shift
    radius = ufl.sqrt(((exx - eyy) / 2) ** 2 + exy**2 + 1e-24)  # never differentiate at zero
    e1, e2 = mean + radius, mean - radius
    shifted = elastic_energy(exx - shift, eyy - shift, exy, E, nu)
    cracked = ufl.conditional(ufl.le(e1 + nu * e2, 0.0), shifted,
                              ufl.conditional(ufl.lt(e2, 0.0), E / 2 * e2**2, 0.0 * e2))
    cracked += tensile_strength * (exx + eyy)
    return (1 - RESIDUAL) * cracked + RESIDUAL * elastic


class Wall:
    def __init__(self, wall, size, cracked):
        self.wall, outline = wall, Outline(wall)
        self.mesh = wall_mesh(wall, outline, size)
        space = fem.VectorFunctionSpace(self.mesh, ("Lagrange", 2))
        self.u = fem.Function(space)
        self.needles = [(needle, tag) for tag, needle in enumerate(wall["needles"], start=1)]
        self.loads = [(force, tag) for tag, (_, force) in enumerate(loads_of(wall, outline), len(self.needles) + 1)]
        soffit = wall["cut"]["soffit"]
        places = [box(*bearing_of(needle), soffit, soffit) for needle, _ in self.needles]
        tags = tags_of(self.mesh, 1, places + [place for place, _ in loads_of(wall, outline)])
        self.outside = ufl.Measure("ds", self.mesh, subdomain_data=tags, metadata=QUADRATURE)
        self.inside = ufl.Measure("dS", self.mesh, subdomain_data=tags, metadata=QUADRATURE)
        energy = self.masonry_energy(wall["masonry"]["tensile_strength"] if cracked else None)
        energy += self.needle_energy() + self.load_energy()
        gradient = ufl.derivative(energy, self.u, ufl.TestFunction(space))
        self.gradient = fem.form(gradient)
        self.tangent = fem.form(ufl.derivative(gradient, self.u, ufl.TrialFunction(space)))
        self.reactions = [fem.form(self.push(needle) * self.outside(tag)) for needle, tag in self.needles]
        self.hold(space)

    def masonry_energy(self, tensile_strength):
        """Elastic energy and weight, masonry and lintels."""
        lintels = [opening for opening in self.wall["openings"] if "lintel" in opening]
        tags = tags_of(self.mesh, 2, [box(*lintel_box(opening)) for opening in lintels], rest=0)
        bulk = ufl.Measure("dx", self.mesh, subdomain_data=tags, metadata=QUADRATURE)
        strain, energy = ufl.sym(ufl.grad(self.u)), 0
        materials = [(self.wall["masonry"], tensile_strength)] + [(o["lintel"], None) for o in lintels]
        for tag, (material, strength) in enumerate(materials):
            density = energy_density(strain, material, strength) + material["unit_weight"] * self.u[1]
            energy += self.wall["thickness"] * density * bulk(tag)
        return energy

    def push(self, needle):
        """Per mm of its bearing."""
        overlap = -self.u[1] - needle["slack"]
        return needle["stiffness"] / needle["bearing"] * ufl.conditional(ufl.gt(overlap, 0.0), overlap, 0.0 * overlap)

    def needle_energy(self):
        return sum(needle["bearing"] / needle["stiffness"] / 2 * self.push(needle)**2 * self.outside(tag)
                   for needle, tag in self.needles)

    def load_energy(self):
        """A load lies on an edge or on a level inside; on a slope it counts along x."""
        level = abs(ufl.FacetNormal(self.mesh)[1])
        return sum(force * (ufl.avg(self.u[1]) * self.inside(tag) + self.u[1] * level * self.outside(tag))
                   for force, tag in self.loads)

    def hold(self, space):
        """Feet fixed; held ends fixed sideways from the soffit up."""
        at, blocks, cut = space.tabulate_dof_coordinates(), space.dofmap.index_map_bs, self.wall["cut"]
        base = np.flatnonzero(np.isclose(at[:, 1], 0.0))
        ends = np.flatnonzero((np.isclose(at[:, 0], 0.0) | np.isclose(at[:, 0], self.wall["length"]))
                              & (at[:, 1] > cut["soffit"] - NEAR)) if self.wall["ends"] == "held" else base[:0]
        self.held = np.unique(np.concatenate([base * blocks, base * blocks + 1, ends * blocks]))
        self.base_left = base[at[base, 0] < cut["left"] + NEAR] * blocks + 1
        self.base_right = base[at[base, 0] > cut["right"] - NEAR] * blocks + 1

    def out_of_balance(self, values):
        self.u.x.array[:] = values
        return fem_petsc.assemble_vector(self.gradient).array.copy()

    def solve(self):
        """Needle forces, then left and right base, N; the number of unknowns and of Newton's steps."""
        u = np.zeros_like(self.u.x.array)
        solver = PETSc.KSP().create(MPI.COMM_SELF)
        solver.setType("preonly")
        solver.getPC().setType("lu")
        solver.getPC().setFactorSolverType("mumps")
        for iteration in range(300):
            full = self.out_of_balance(u)
            gradient = full.copy()
            gradient[self.held] = 0.0
            relative = np.linalg.norm(gradient) / np.linalg.norm(full)
            print(f"  {iteration:3d} {relative:.2e}", file=sys.stderr, flush=True)
            if iteration > 0 and relative < 1e-10:
                break
            matrix = fem_petsc.assemble_matrix(self.tangent)
            matrix.assemble()
            matrix.zeroRowsColumns(self.held.astype(np.int32))
            solver.setOperators(matrix)
            right, step = matrix.createVecs()
            right.array[:] = -gradient
            solver.solve(right, step)
            u = u + self.step_length(u, step.array, gradient) * step.array
        else:
            raise RuntimeError("no convergence")
        forces = [fem.assemble_scalar(reaction) for reaction in self.reactions]
        forces += [full[self.base_left].sum(), full[self.base_right].sum()]
        return forces, len(u), iteration

    def step_length(self, u, step, gradient):
        """Where the energy's slope along the step has fallen to a tenth, by bisection."""
        def slope(length):
            at = self.out_of_balance(u + length * step)
            at[self.held] = 0.0
            return at @ step
        first = gradient @ step
        if slope(1.0) <= 0.1 * abs(first):
            return 1.0
        low, high = 0.0, 1.0
        for _ in range(12):
            middle = (low + high) / 2
            at = slope(middle)
            if abs(at) <= 0.1 * abs(first):
                return middle
            low, high = (middle, high) if at < 0 else (low, middle)
        return low if low > 0 else high


def report(wall, size):
    """Both laws on both meshes: printed, and as recorded."""
    element = "6-node triangles" if Outline(wall).slants else "9-node quadrilaterals"
    print(f"{wall['name']}: {element} of at most {size:g} mm, and {2 * size:g} mm")
    recorded = {"element": element, "size": size}
    labels = [f"needle {i}" for i in range(1, len(wall["needles"]) + 1)] + ["base left", "base right"]
    for law in ("uncracked", "cracked"):
        coarse, _, _ = Wall(wall, 2 * size, law == "cracked").solve()
        forces, unknowns, steps = Wall(wall, size, law == "cracked").solve()
        recorded[law] = {"needles": [round(f, 1) for f in forces[:-2]], "base_left": round(forces[-2], 1),
                         "base_right": round(forces[-1], 1), "unknowns": unknowns, "steps": steps,
                         "change_from_twice_the_size": round(max(abs(c / f - 1) if f else 0.0
                                                                 for c, f in zip(coarse, forces)), 6)}
        print(f"  {law}, {unknowns} unknowns, {steps} steps; sum {sum(forces) / 1000:.4f} kN")
        for label, force, rough in zip(labels, forces, coarse):
            change = f"{100 * (rough / force - 1):+.3f}%" if force else "open"
            print(f"    {label:10s} {force / 1000:9.4f} kN   at {2 * size:g} mm {change}")
        sys.stdout.flush()
    return recorded


def main():
    walls = json.loads(PROBLEM.read_text())["walls"]
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    options.add_argument("--write", action="store_true")
    options.add_argument("--wall", action="append", choices=[wall["name"] for wall in walls])
    options.add_argument("--size", type=float, default=40.0)
    chosen = options.parse_args()
    print(f"DOLFINx {__version__}")
    recorded = json.loads(RECORDED.read_text()) if RECORDED.exists() else {"walls": {}}
    for wall in walls:
        if chosen.wall and wall["name"] not in chosen.wall:
            continue
        found = report(wall, chosen.size)
        found |= {"library": f"DOLFINx {__version__}", "date": datetime.date.today().isoformat()}
        recorded["walls"][wall["name"]] = found
        if chosen.write:
            RECORDED.write_text(json.dumps(recorded, indent=1) + "\n")


if __name__ == "__main__":
    main()
