#!/usr/bin/env python3
"""Low-speed drag of a magnet in a thin wall with slits or soldered seams, by finite differences on the unrolled wall:
div(rho grad psi) = dB_r/dz, drag -sum psi dB_r/dz, rho the wall's resistivity in space (a seam is a strip of another one).
Run by hand (python3-scipy); the figures stand in tests/laws/eddy/slits.tests.cpp.

Lengths in wall radii. Only half a sector between two slits is solved: it is symmetric about the slit and about its middle."""
import numpy as np
import scipy.sparse as sparse
from scipy.sparse.linalg import splu
from scipy.special import ellipe, ellipk

RADIUS, LENGTH = 6 / 7, 10 / 7  # cylinder 12 x 10 mm in a wall of 7 mm mean radius


def sheet(R, half, z):
    """Radial field at radius 1 of a solenoid: difference of two loops' potentials."""
    def loop(h):
        k2 = 4 * R / ((R + 1) ** 2 + h * h)
        return np.sqrt(R / k2) / np.pi * ((1 - k2 / 2) * ellipk(k2) - ellipe(k2))
    return loop(z - half) - loop(z + half)


def radial_field(z, dipole=False):
    return 3 * z / (1 + z * z) ** 2.5 if dipole else sheet(RADIUS, LENGTH / 2, z)


def slope_of_field(z, dipole):
    h = 1e-4
    return (radial_field(z + h, dipole) - radial_field(z - h, dipole)) / (2 * h)


class Wall:
    """`strip` wide (the slit or seam), its resistivity over the wall's (inf: open), reaching down to z = `until`."""

    def __init__(self, slits, strip=0.0, over=np.inf, until=np.inf, across=48, reach=8.0, dz=0.05):
        half = np.pi / slits
        in_strip = 6 if strip and np.isfinite(over) else 0
        plain = half - strip / 2
        ds = np.concatenate([np.full(in_strip, strip / 2 / max(in_strip, 1)), self.graded(plain, across)])
        self.ds, self.dz = ds, dz
        self.z = np.arange(-reach, reach + dz / 2, dz)
        rho = np.ones((len(self.z), len(ds)))
        inside = self.z <= until
        rho[np.ix_(inside, np.arange(len(ds)) < in_strip)] = over
        # An open slit: psi = 0 at the edge. Where it ends the strip's metal goes on as a symmetry line.
        self.open = inside & (not np.isfinite(over))
        self.bridge = strip / 2 if not np.isfinite(over) else 0.0  # metal between the slits' lines below their end
        self.build(rho)

    @staticmethod
    def graded(length, n):
        """Finer at the slit's edge."""
        edges = length * (np.linspace(0, 1, n + 1) ** 1.6)
        return np.diff(edges)

    def build(self, rho):
        nz, ns = rho.shape
        at = np.arange(nz * ns).reshape(nz, ns)
        rows, cols, vals = [], [], []
        diagonal = np.zeros(nz * ns)

        def couple(a, b, g):
            rows.extend([a, b]); cols.extend([b, a]); vals.extend([g, g])
            np.subtract.at(diagonal, a, g); np.subtract.at(diagonal, b, g)
        for j in range(ns - 1):  # across
            g = self.dz / (self.ds[j] / (2 * rho[:, j]) + self.ds[j + 1] / (2 * rho[:, j + 1]))
            couple(at[:, j], at[:, j + 1], g)
        for j in range(ns):  # along
            g = self.ds[j] / (self.dz / 2) / (1 / rho[:-1, j] + 1 / rho[1:, j])
            couple(at[:-1, j], at[1:, j], g)
        edge = 2 * self.dz / self.ds[0] * rho[:, 0]
        diagonal[at[self.open, 0]] -= edge[self.open]
        top = 2 * self.ds / self.dz * rho[0]
        diagonal[at[0]] -= top  # psi = 0 at the upper end
        matrix = sparse.csc_matrix((np.concatenate(vals), (np.concatenate(rows), np.concatenate(cols))), shape=(nz * ns,) * 2)
        self.solve = splu(sparse.csc_matrix(matrix + sparse.diags(diagonal))).solve

    def drag(self, place=0.0, dipole=False):
        source = np.outer(slope_of_field(self.z - place, dipole), self.ds).ravel() * self.dz
        return -float(source @ self.solve(source))


def ratio(wall, whole, dipole=False):
    return wall.drag(0, dipole) / whole.drag(0, dipole)


def end_shift(slits, dipole=False, **grid):
    """How much shorter than it is a slit that ends at z = 0 acts: sum over places of the magnet against a sharp end."""
    cut, full, whole = Wall(slits, until=0, **grid), Wall(slits, **grid), Wall(slits, over=1.0, **grid)
    slit, sound = full.drag(0, dipole), whole.drag(0, dipole)
    places = np.arange(-4, 4.01, 0.1)
    drags = np.array([cut.drag(p, dipole) for p in places])
    sharp = np.where(places < 0, slit, np.where(places > 0, sound, (slit + sound) / 2))
    return np.sum(drags - sharp) * 0.1 / (sound - slit) + cut.dz / 2  # the last cell of the slit is cut whole


if __name__ == "__main__":
    for dipole in (True, False):
        print("dipole" if dipole else "cylinder")
        for n in (1, 2, 4):
            whole = Wall(n, over=1.0)
            row = ["%d slits: narrow %.4f" % (n, ratio(Wall(n), whole, dipole))]
            for g in (0.1, 0.3):
                row.append("width %.1f: %.4f" % (g, ratio(Wall(n, strip=g), whole, dipole)))
            for g, over in ((0.05, 10.0), (0.05, 100.0), (0.2, 10.0)):
                seam = Wall(n, strip=g, over=over)
                row.append("seam %.2f x %g: %.4f" % (g, over, ratio(seam, Wall(n, strip=g, over=1.0), dipole)))
            row.append("end acts %.3f shorter" % end_shift(n, dipole))
            print("  " + ", ".join(row))
    print("finer: narrow %.4f, end %.3f" % (ratio(Wall(1, across=96, dz=0.025), Wall(1, over=1.0, across=96, dz=0.025)), end_shift(1, across=96, dz=0.025)))
