#include "holdback/physics/whirl.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>

namespace holdback::physics {

namespace {
using std::numbers::pi;
constexpr double infinity = std::numeric_limits<double>::infinity();
}  // namespace

// ω = (π/L)² √(EI/μ)
double uniform_whirl(double rigidity, double mass_per_length, double span) {
  if (rigidity <= 0 || span <= 0) return 0;
  if (mass_per_length <= 0) return infinity;
  return std::sqrt(rigidity) / std::sqrt(mass_per_length) * (pi / span) * (pi / span);
}

namespace {

using Places = std::vector<double>;
using Vector = std::vector<double>;

/// A symmetric matrix in which an entry has at most three neighbours on each side: the diagonal and what stands below.
using Banded = std::vector<std::array<double, 4>>;

constexpr double closest = 1e-4;    // of the length: places closer than this are one
constexpr double narrowest = 1e-3;  // of the length: a narrower mass acts at its middle
constexpr int elements = 32;

Vector multiplied(const Banded& matrix, const Vector& x) {
  Vector product(x.size(), 0.0);
  for (std::size_t j = 0; j < x.size(); ++j) {
    product[j] += matrix[j][0] * x[j];
    for (std::size_t k = 1; k < 4 && j + k < x.size(); ++k) {
      product[j + k] += matrix[j][k] * x[j];
      product[j] += matrix[j][k] * x[j + k];
    }
  }
  return product;
}

double dot(const Vector& a, const Vector& b) {
  double sum = 0;
  for (std::size_t i = 0; i < a.size(); ++i) sum += a[i] * b[i];
  return sum;
}

/// Cholesky's factor in place of the matrix; false where it is not positive definite.
bool factorise(Banded& matrix) {
  for (std::size_t j = 0; j < matrix.size(); ++j) {
    if (!(matrix[j][0] > 0) || !std::isfinite(matrix[j][0])) return false;
    const double root = std::sqrt(matrix[j][0]);
    for (double& entry : matrix[j]) entry /= root;
    for (std::size_t k = 1; k < 4 && j + k < matrix.size(); ++k) {
      for (std::size_t i = k; i < 4; ++i) matrix[j + k][i - k] -= matrix[j][i] * matrix[j][k];
    }
  }
  return true;
}

Vector solved(const Banded& factor, Vector x) {
  for (std::size_t j = 0; j < x.size(); ++j) {
    x[j] /= factor[j][0];
    for (std::size_t k = 1; k < 4 && j + k < x.size(); ++k) x[j + k] -= factor[j][k] * x[j];
  }
  for (std::size_t j = x.size(); j-- > 0;) {
    for (std::size_t k = 1; k < 4 && j + k < x.size(); ++k) x[j] -= factor[j][k] * x[j + k];
    x[j] /= factor[j][0];
  }
  return x;
}

// ---- the elements ---------------------------------------------------------------------------------------------------

/// Spread masses as they are; narrow ones moved to their middle.
std::vector<BeamMass> spread_or_lumped(std::vector<BeamMass> masses, double length) {
  for (BeamMass& mass : masses) {
    if (mass.end - mass.begin < narrowest * length) mass.begin = mass.end = mass.begin + (mass.end - mass.begin) / 2;
  }
  return masses;
}

/// Ends of elements: the bearings, then all other places that keep their distance, then even parts between them.
Places mesh_of(const Beam& beam, const Places& places) {
  const double length = places.back() - places.front();
  Places kept{beam.first_bearing, beam.second_bearing};
  const auto keep = [&](double x) {
    const auto near = [&](double other) { return std::abs(x - other) < closest * length; };
    if (std::none_of(kept.begin(), kept.end(), near)) kept.push_back(x);
  };
  keep(places.front());
  keep(places.back());
  for (const double x : places) keep(x);
  std::sort(kept.begin(), kept.end());

  Places mesh{kept.front()};
  for (std::size_t i = 1; i < kept.size(); ++i) {
    const double gap = kept[i] - kept[i - 1];
    const int parts = std::max(1, static_cast<int>(std::ceil(elements * (gap / length))));
    for (int part = 1; part < parts; ++part) mesh.push_back(kept[i - 1] + gap * part / parts);
    mesh.push_back(kept[i]);
  }
  return mesh;
}

struct Element {
  double length{};
  double rigidity{};         // of the same compliance as what lies within
  double mass_per_length{};  // of the same mass
};

Element element_of(const Beam& beam, const Places& places, const std::vector<BeamMass>& masses, double begin,
                   double end) {
  double compliance = 0, mass = 0;
  for (std::size_t i = 0; i + 1 < places.size(); ++i) {
    const double overlap = std::min(end, places[i + 1]) - std::max(begin, places[i]);
    if (overlap <= 0) continue;
    const BeamStretch& stretch = beam.stretches[beam.stretch_at(places[i])];
    compliance += overlap / stretch.rigidity;
    mass += overlap * std::max(0.0, stretch.mass_per_length);
  }
  for (const BeamMass& carried : masses) {
    const double overlap = std::min(end, carried.end) - std::max(begin, carried.begin);
    if (overlap > 0) mass += std::max(0.0, carried.mass) * overlap / (carried.end - carried.begin);
  }
  return {end - begin, (end - begin) / compliance, mass / (end - begin)};
}

/// Lower half of a symmetric 4 × 4 matrix, column by column, on the deflection and slope of an element's two ends.
using ElementMatrix = std::array<std::array<double, 4>, 4>;

ElementMatrix stiffness_of(const Element& e) {
  const double l = e.length, k = e.rigidity / (l * l * l);
  return {{{12 * k, 6 * l * k, -12 * k, 6 * l * k},
           {4 * l * l * k, -6 * l * k, 2 * l * l * k, 0},
           {12 * k, -6 * l * k, 0, 0},
           {4 * l * l * k, 0, 0, 0}}};
}

ElementMatrix mass_of(const Element& e) {
  const double l = e.length, m = e.mass_per_length * l / 420;
  return {{{156 * m, 22 * l * m, 54 * m, -13 * l * m},
           {4 * l * l * m, 13 * l * m, -3 * l * l * m, 0},
           {156 * m, -22 * l * m, 0, 0},
           {4 * l * l * m, 0, 0, 0}}};
}

void add(const ElementMatrix& part, std::size_t first, Banded& whole) {
  for (std::size_t j = 0; j < 4; ++j) {
    for (std::size_t k = 0; k + j < 4; ++k) whole[first + j][k] += part[j][k];
  }
}

/// Cuts an entry off from all others: its row and column leave the matrix, `diagonal` stays.
void isolate(std::size_t entry, double diagonal, Banded& matrix) {
  for (std::size_t k = 1; k < 4; ++k) {
    matrix[entry][k] = 0;
    if (entry >= k) matrix[entry - k][k] = 0;
  }
  matrix[entry][0] = diagonal;
}

struct Matrices {
  Banded stiffness{};
  Banded mass{};
};

std::size_t nearest(const Places& mesh, double x) {
  const auto closer = [x](double a, double b) { return std::abs(a - x) < std::abs(b - x); };
  return static_cast<std::size_t>(std::min_element(mesh.begin(), mesh.end(), closer) - mesh.begin());
}

Matrices matrices_of(const Beam& beam, const Places& places, const std::vector<BeamMass>& masses) {
  const Places mesh = mesh_of(beam, places);
  Matrices made{Banded(2 * mesh.size()), Banded(2 * mesh.size())};
  for (std::size_t i = 0; i + 1 < mesh.size(); ++i) {
    const Element element = element_of(beam, places, masses, mesh[i], mesh[i + 1]);
    add(stiffness_of(element), 2 * i, made.stiffness);
    add(mass_of(element), 2 * i, made.mass);
  }
  for (const BeamMass& lump : masses) {
    if (lump.begin >= lump.end) made.mass[2 * nearest(mesh, lump.begin)][0] += std::max(0.0, lump.mass);
  }
  for (const double bearing : {beam.first_bearing, beam.second_bearing}) {
    const std::size_t held = 2 * nearest(mesh, bearing);
    isolate(held, made.stiffness[held][0], made.stiffness);
    isolate(held, 0, made.mass);
  }
  return made;
}

/// ω² of the lowest root of K u = ω² M u; infinite without mass, zero where K is not positive definite.
double lowest_root(Banded stiffness, const Banded& mass) {
  if (!factorise(stiffness)) return 0;
  Vector u(mass.size());
  for (std::size_t i = 0; i < u.size(); i += 2) u[i] = 1 + static_cast<double>(i) / static_cast<double>(u.size());
  Vector pushed = multiplied(mass, u);
  double root = infinity;
  for (int step = 0; step < 200; ++step) {
    u = solved(stiffness, pushed);
    const double strain = dot(u, pushed);
    pushed = multiplied(mass, u);
    const double motion = dot(u, pushed);
    if (motion <= 0) return infinity;
    const double before = root;
    root = strain / motion;
    if (!std::isfinite(root)) return 0;
    if (std::abs(root - before) <= 1e-13 * root) break;
    for (double& entry : pushed) entry *= 1 / std::sqrt(motion);
  }
  return root;
}

}  // namespace

double beam_whirl(const Beam& beam, const std::vector<BeamMass>& masses) {
  if (!beam.can_bear()) return 0;
  Places ends;
  for (const BeamMass& mass : masses) ends.insert(ends.end(), {mass.begin, std::max(mass.begin, mass.end)});
  const Places extent = beam.places(ends);
  const double length = extent.back() - extent.front();
  if (!std::isfinite(length)) return 0;

  const std::vector<BeamMass> carried = spread_or_lumped(masses, length);
  for (const BeamMass& mass : carried) ends.push_back(mass.begin);
  const Matrices matrices = matrices_of(beam, beam.places(ends), carried);
  return std::sqrt(lowest_root(matrices.stiffness, matrices.mass));
}

}  // namespace holdback::physics
