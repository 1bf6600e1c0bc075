"""The wall of independent_wall_test.cpp in a general-purpose finite-element library.

Run:  apt-get install python3-dolfinx; /usr/bin/python3 independent_wall.py [element size in mm, 50 unless given]

Shares nothing with this project but the statement of the problem: 9-node (biquadratic) elements with
3 x 3 Gauss points on a grid of its own; the masonry is given as an energy density, and the library
differentiates it twice for the stress and the tangent. N, mm, N/mm2.
"""

import sys

import numpy as np
import ufl
from dolfinx import __version__, fem, mesh
from dolfinx.fem import petsc as fem_petsc
from mpi4py import MPI
from petsc4py import PETSc

LENGTH, HEIGHT, THICKNESS = 6000.0, 5200.0, 215.0
CUT = (500.0, 5300.0, 2400.0)  # left, right, soffit
WINDOWS = [(900.0, 1900.0, 3200.0, 4400.0), (3500.0, 4700.0, 3300.0, 4300.0)]  # left, right, sill, head
FLOOR = (2700.0, 9.0)  # level, N/mm
ROOF = 8.0  # N/mm on the top
POINT = (2600.0, 2700.0, 300.0, 12000.0)  # x, level, bearing, N
NEEDLES = [900.0, 2000.0, 3300.0, 4700.0]
BEARING, STIFFNESS = 152.0, 20000.0
E, NU, UNIT_WEIGHT, RESIDUAL = 1500.0, 0.2, 19e-6, 1e-4


def grid_lines(features, size):
    """Every feature, and equal steps of at most `size` between neighbours."""
    features = sorted(set(features))
    steps = [np.linspace(a, b, int(np.ceil((b - a) / size)) + 1)[:-1] for a, b in zip(features, features[1:])]
    return np.concatenate(steps + [features[-1:]])


def solid(x, y):
    if CUT[0] < x < CUT[1] and y < CUT[2]:
        return False
    return not any(left < x < right and sill < y < head for left, right, sill, head in WINDOWS)


def wall_mesh(size):
    xs = [0.0, LENGTH, CUT[0], CUT[1], POINT[0] - POINT[2] / 2, POINT[0] + POINT[2] / 2]
    xs += [x for window in WINDOWS for x in window[:2]]
    xs += [x + side for x in NEEDLES for side in (-BEARING / 2, BEARING / 2)]
    ys = [0.0, HEIGHT, CUT[2], FLOOR[0], POINT[1]] + [y for window in WINDOWS for y in window[2:]]
    xs, ys = grid_lines(xs, size), grid_lines(ys, size)
    number = {}
    cells = []
    for j in range(len(ys) - 1):
        for i in range(len(xs) - 1):
            if solid((xs[i] + xs[i + 1]) / 2, (ys[j] + ys[j + 1]) / 2):
                corners = [(i, j), (i + 1, j), (i, j + 1), (i + 1, j + 1)]
                cells.append([number.setdefault(corner, len(number)) for corner in corners])
    points = np.array([[xs[i], ys[j]] for i, j in number])
    domain = ufl.Mesh(ufl.VectorElement("Lagrange", ufl.quadrilateral, 1))
    return mesh.create_mesh(MPI.COMM_SELF, np.array(cells, dtype=np.int64), points, domain)


def facet_tags(wall, marks):
    """Tags 1, 2, ... for the facets on each of `marks`, given as (level, from, to)."""
    wall.topology.create_connectivity(1, 2)
    found = [mesh.locate_entities(wall, 1, lambda x, m=m: np.isclose(x[1], m[0]) & (x[0] > m[1] - 1e-6)
                                  & (x[0] < m[2] + 1e-6)) for m in marks]
    facets = np.concatenate(found)
    tags = np.concatenate([np.full(len(f), k, dtype=np.int32) for k, f in enumerate(found, start=1)])
    order = np.argsort(facets)
    return mesh.meshtags(wall, 1, facets[order], tags[order])


def energy_density(strain, tensile_strength):
    exx, eyy, exy = strain[0, 0], strain[1, 1], strain[0, 1]

    def elastic_energy(a, b, c):
        return E / (2 * (1 - NU**2)) * (a**2 + b**2 + 2 * NU * a * b) + E / (1 + NU) * c**2

    elastic = elastic_energy(exx, eyy, exy)
    if tensile_strength is None:
        return elastic
    shift = tensile_strength * (1 - NU) / E
    mean = (exx + eyy) / 2 - shift
    radius = ufl.sqrt(((exx - eyy) / 2) ** 2 + exy**2 + 1e-24)  # never differentiate at zero
    e1, e2 = mean + radius, mean - radius
    shifted = elastic_energy(exx - shift, eyy - shift, exy)
    one_direction = E / 2 * e2**2
    cracked = ufl.conditional(ufl.le(e1 + NU * e2, 0.0), shifted,
                              ufl.conditional(ufl.lt(e2, 0.0), one_direction, 0.0 * e2))
    cracked += tensile_strength * (exx + eyy)
    return (1 - RESIDUAL) * cracked + RESIDUAL * elastic


class Wall:
    def __init__(self, size, tensile_strength):
        self.mesh = wall_mesh(size)
        space = fem.VectorFunctionSpace(self.mesh, ("Lagrange", 2))
        self.u, test, trial = fem.Function(space), ufl.TestFunction(space), ufl.TrialFunction(space)
        bearings = [(CUT[2], x - BEARING / 2, x + BEARING / 2) for x in NEEDLES]
        outside = ufl.Measure("ds", self.mesh, subdomain_data=facet_tags(self.mesh, bearings + [(HEIGHT, 0.0, LENGTH)]))
        half = POINT[2] / 2
        # One facet carries one tag: the floor in three stretches around the point load.
        levels = [(FLOOR[0], 0.0, POINT[0] - half), (FLOOR[0], POINT[0] - half, POINT[0] + half),
                  (FLOOR[0], POINT[0] + half, LENGTH)]
        inside = ufl.Measure("dS", self.mesh, subdomain_data=facet_tags(self.mesh, levels))
        bulk = ufl.Measure("dx", self.mesh, metadata={"quadrature_degree": 5})
        contact = outside(metadata={"quadrature_degree": 5})
        bed = STIFFNESS / BEARING
        push = ufl.conditional(ufl.lt(self.u[1], 0.0), self.u[1], 0.0)
        energy = THICKNESS * energy_density(ufl.sym(ufl.grad(self.u)), tensile_strength) * bulk
        for tag in range(1, len(NEEDLES) + 1):
            energy += bed / 2 * push**2 * contact(tag)
        energy += THICKNESS * UNIT_WEIGHT * self.u[1] * bulk
        energy += ROOF * self.u[1] * outside(len(NEEDLES) + 1)
        for tag in (1, 2, 3):
            intensity = FLOOR[1] + (POINT[3] / POINT[2] if tag == 2 else 0.0)
            energy += intensity * ufl.avg(self.u[1]) * inside(tag)
        gradient = ufl.derivative(energy, self.u, test)
        self.gradient = fem.form(gradient)
        self.tangent = fem.form(ufl.derivative(gradient, self.u, trial))
        self.reactions = [fem.form(-bed * push * contact(tag)) for tag in range(1, len(NEEDLES) + 1)]
        base = fem.locate_dofs_geometrical(space, lambda x: np.isclose(x[1], 0.0))
        self.fixed = fem.dirichletbc(np.zeros(2), base, space)
        blocks = space.dofmap.index_map_bs
        self.base = np.concatenate([base * blocks, base * blocks + 1])
        at = space.tabulate_dof_coordinates()[base]
        self.base_left = base[at[:, 0] < CUT[0] + 1e-6] * blocks + 1
        self.base_right = base[at[:, 0] > CUT[1] - 1e-6] * blocks + 1

    def out_of_balance(self, values):
        self.u.x.array[:] = values
        return fem_petsc.assemble_vector(self.gradient).array.copy()

    def solve(self):
        u = np.zeros_like(self.u.x.array)
        solver = PETSc.KSP().create(MPI.COMM_SELF)
        solver.setType("preonly")
        solver.getPC().setType("lu")
        solver.getPC().setFactorSolverType("mumps")
        for iteration in range(200):
            full = self.out_of_balance(u)
            gradient = full.copy()
            gradient[self.base] = 0.0
            relative = np.linalg.norm(gradient) / np.linalg.norm(full)
            print(f"  {iteration:3d} {relative:.2e}", file=sys.stderr)
            if iteration > 0 and relative < 1e-10:
                break
            matrix = fem_petsc.assemble_matrix(self.tangent, bcs=[self.fixed])
            matrix.assemble()
            solver.setOperators(matrix)
            right, step = matrix.createVecs()
            right.array[:] = -gradient
            solver.solve(right, step)
            u = u + self.step_length(u, step.array, gradient) * step.array
        else:
            raise RuntimeError("no convergence")
        print(f"  {len(u)} unknowns, {iteration} iterations")
        up = [fem.assemble_scalar(reaction) for reaction in self.reactions]
        return up + [full[self.base_left].sum(), full[self.base_right].sum()]

    def step_length(self, u, step, gradient):
        """Where the energy's slope along the step has fallen to a tenth, by bisection."""
        def slope(length):
            return np.where(np.isin(np.arange(len(step)), self.base), 0.0,
                            self.out_of_balance(u + length * step)) @ step
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


def main():
    size = float(sys.argv[1]) if len(sys.argv) > 1 else 50.0
    print(f"DOLFINx {__version__}, biquadratic elements of at most {size:g} mm")
    for name, tensile_strength in [("uncracked", None), ("cracked, f_t = 0.1", 0.1)]:
        print(name)
        forces = Wall(size, tensile_strength).solve()
        labels = [f"N{i + 1}" for i in range(len(NEEDLES))] + ["base left", "base right"]
        for label, force in zip(labels, forces):
            print(f"  {label:10s} {force / 1000:.4f} kN")
        print(f"  {'sum':10s} {sum(forces) / 1000:.4f} kN")


if __name__ == "__main__":
    main()
