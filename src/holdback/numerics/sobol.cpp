#include "holdback/numerics/sobol.hpp"

#include <array>
#include <stdexcept>

namespace holdback::numerics {

namespace {

constexpr int bits = 32;
using Directions = std::array<std::uint32_t, bits>;

/// Primitive polynomial (degree s, inner coefficients a) and first direction numbers m of a coordinate [joe2008], file
/// new-joe-kuo-6.21201. The first coordinate has none: it is van der Corput's sequence.
struct Row {
  int s;
  std::uint32_t a;
  std::array<std::uint32_t, 6> m;
};
constexpr std::array<Row, most_sobol_dimensions - 1> rows{{
    {1, 0, {1}},
    {2, 1, {1, 3}},
    {3, 1, {1, 3, 1}},
    {3, 2, {1, 1, 1}},
    {4, 1, {1, 1, 3, 3}},
    {4, 4, {1, 3, 5, 13}},
    {5, 2, {1, 1, 5, 5, 17}},
    {5, 4, {1, 1, 5, 5, 5}},
    {5, 7, {1, 1, 7, 11, 19}},
    {5, 11, {1, 1, 5, 1, 1}},
    {5, 13, {1, 1, 1, 3, 11}},
    {5, 14, {1, 3, 5, 5, 31}},
    {6, 1, {1, 3, 3, 9, 7, 49}},
    {6, 13, {1, 1, 1, 15, 21, 21}},
    {6, 16, {1, 3, 1, 13, 27, 49}},
}};

Directions directions_of(int dimension) {
  Directions v{};
  if (dimension == 0) {
    for (int k = 0; k < bits; ++k) v[static_cast<std::size_t>(k)] = 1U << (bits - 1 - k);
    return v;
  }
  const Row& row = rows[static_cast<std::size_t>(dimension - 1)];
  for (int k = 0; k < bits; ++k) {
    const auto at = static_cast<std::size_t>(k);
    if (k < row.s) {
      v[at] = row.m[at] << (bits - 1 - k);
      continue;
    }
    const auto back = static_cast<std::size_t>(k - row.s);
    v[at] = v[back] ^ (v[back] >> row.s);
    for (int j = 1; j < row.s; ++j)
      if ((row.a >> (row.s - 1 - j)) & 1U) v[at] ^= v[static_cast<std::size_t>(k - j)];
  }
  return v;
}

/// A well mixed number [splitmix], the shift of a coordinate.
std::uint32_t mixed(std::uint32_t x) {
  x ^= x >> 16;
  x *= 0x7feb352dU;
  x ^= x >> 15;
  x *= 0x846ca68bU;
  return x ^ (x >> 16);
}

int trailing_zeros(std::size_t n) {
  int count = 0;
  for (; (n & 1U) == 0; n >>= 1) ++count;
  return count;
}

}  // namespace

std::vector<double> sobol_points(std::size_t count, int dimensions, std::uint32_t seed) {
  if (dimensions < 1 || dimensions > most_sobol_dimensions)
    throw std::invalid_argument("sobol_points: dimensions outside 1 … 16");
  const auto width = static_cast<std::size_t>(dimensions);
  std::vector<double> points(count * width);
  for (std::size_t d = 0; d < width; ++d) {
    const Directions v = directions_of(static_cast<int>(d));
    const std::uint32_t shift = mixed(seed + 0x9e3779b9U * static_cast<std::uint32_t>(d + 1));
    std::uint32_t x = 0;
    for (std::size_t i = 0; i < count; ++i) {
      if (i > 0) x ^= v[static_cast<std::size_t>(trailing_zeros(i))];  // Gray code order
      points[i * width + d] = (static_cast<double>(x ^ shift) + 0.5) / 4294967296.0;
    }
  }
  return points;
}

}  // namespace holdback::numerics
