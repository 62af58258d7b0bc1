#include "holdback/physics/beam.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace holdback::physics {

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr Across boundless{infinity, infinity};

/// Of the loads over `x` or from there on.
Across load_per_length(const std::vector<BeamLoad>& loads, double x) {
  Across sum;
  for (const BeamLoad& load : loads) {
    if (load.begin <= x && x < load.end) sum = sum + 1 / (load.end - load.begin) * load.force;
  }
  return sum;
}

Across force_at(const std::vector<BeamLoad>& loads, double x) {
  Across sum;
  for (const BeamLoad& load : loads) {
    if (load.begin >= load.end && load.begin == x) sum = sum + load.force;
  }
  return sum;
}

/// R_2 = −Σ F (x_F − a)/(b − a), R_1 = −Σ F − R_2
void find_reactions(const Beam& beam, const std::vector<BeamLoad>& loads, BentBeam& bent) {
  const double span = beam.second_bearing - beam.first_bearing;
  Across all;
  for (const BeamLoad& load : loads) {
    const double arm = load.begin + std::max(0.0, load.end - load.begin) / 2 - beam.first_bearing;
    bent.second_reaction = bent.second_reaction + -arm / span * load.force;
    all = all + load.force;
  }
  bent.first_reaction = -1.0 * all + -1.0 * bent.second_reaction;
}

/// Pieces from left to right, from a left end that neither slopes nor sags.
void bend_pieces(const Beam& beam, const std::vector<double>& places, const std::vector<BeamLoad>& loads,
                 BentBeam& bent) {
  BentPiece piece;
  for (std::size_t i = 0; i + 1 < places.size(); ++i) {
    piece.begin = places[i];
    piece.length = places[i + 1] - places[i];
    piece.stretch = beam.stretch_at(piece.begin);
    piece.rigidity = beam.stretches[piece.stretch].rigidity;
    piece.load_per_length = load_per_length(loads, piece.begin);
    piece.shear = piece.shear + force_at(loads, piece.begin);
    bent.pieces.push_back(piece);

    const BentPiece& done = bent.pieces.back();
    piece.moment_here = done.moment(done.length);
    piece.slope_here = done.slope(done.length);
    piece.deflection_here = done.deflection(done.length);
    piece.shear = done.shear + done.length * done.load_per_length;
  }
}

/// Turns and lifts the whole line until it passes through both bearings.
void hang_on_bearings(const Beam& beam, BentBeam& bent) {
  const Across first = bent.deflection(beam.first_bearing);
  const Across rise = bent.deflection(beam.second_bearing) + -1.0 * first;
  const Across turn = -1 / (beam.second_bearing - beam.first_bearing) * rise;
  for (BentPiece& piece : bent.pieces) {
    piece.slope_here = piece.slope_here + turn;
    piece.deflection_here = piece.deflection_here + -1.0 * first + (piece.begin - beam.first_bearing) * turn;
  }
}

struct Peak {
  double place{};
  double size{};
};

/// The largest size on 0 … length of a vector that changes smoothly: the best of 17 samples, then golden sections
/// around it.
template <class Vector>
Peak peak_of(const Vector& vector, double length) {
  constexpr int parts = 16;
  const auto at = [&](double s) { return Peak{s, vector(s).size()}; };
  const auto larger = [](const Peak& a, const Peak& b) { return b.size > a.size ? b : a; };
  Peak best = at(0);
  int best_part = 0;
  for (int part = 1; part <= parts; ++part) {
    const Peak sample = at(part == parts ? length : length * part / parts);
    if (sample.size > best.size) {
      best = sample;
      best_part = part;
    }
  }
  double low = length * std::max(0, best_part - 1) / parts;
  double high = length * std::min(parts, best_part + 1) / parts;
  const double golden = 1 / std::numbers::phi;
  Peak left = at(high - golden * (high - low)), right = at(low + golden * (high - low));
  for (int step = 0; step < 40; ++step) {
    if (left.size < right.size) {
      low = left.place;
      left = right;
      right = at(low + golden * (high - low));
    } else {
      high = right.place;
      right = left;
      left = at(high - golden * (high - low));
    }
  }
  return larger(best, larger(left, right));
}

void find_peaks(BentBeam& bent) {
  for (BentPiece& piece : bent.pieces) {
    const Peak moment = peak_of([&](double s) { return piece.moment(s); }, piece.length);
    piece.largest_moment = moment.size;
    piece.largest_moment_place = piece.begin + moment.place;
    if (moment.size > bent.largest_moment) {
      bent.largest_moment = moment.size;
      bent.largest_moment_place = piece.largest_moment_place;
    }
    const Peak deflection = peak_of([&](double s) { return piece.deflection(s); }, piece.length);
    if (deflection.size > bent.largest_deflection) {
      bent.largest_deflection = deflection.size;
      bent.largest_deflection_place = piece.begin + deflection.place;
    }
  }
}

BentBeam unbearable(const Beam& beam) {
  BentBeam bent;
  bent.first_reaction = bent.second_reaction = boundless;
  bent.first_slope = bent.second_slope = infinity;
  bent.largest_deflection = bent.largest_moment = infinity;
  bent.largest_deflection_place = bent.largest_moment_place = beam.first_bearing;
  return bent;
}

/// Not-a-number and infinity spread, so every piece shows whether numbers overflowed before or in it.
bool is_finite(const BentBeam& bent) {
  const auto finite = [](const Across& a) { return std::isfinite(a.size()); };
  return finite(bent.first_reaction) && finite(bent.second_reaction) &&
         std::all_of(bent.pieces.begin(), bent.pieces.end(), [&](const BentPiece& piece) {
           return finite(piece.moment(piece.length)) && finite(piece.slope(piece.length)) &&
                  finite(piece.deflection(piece.length));
         });
}

/// The piece over a place and how far into it; null without pieces.
const BentPiece* piece_at(const BentBeam& bent, double x, double& s) {
  if (bent.pieces.empty()) return nullptr;
  auto next = std::upper_bound(bent.pieces.begin(), bent.pieces.end(), x,
                               [](double place, const BentPiece& piece) { return place < piece.begin; });
  if (next != bent.pieces.begin()) --next;
  s = std::clamp(x - next->begin, 0.0, next->length);
  return &*next;
}

}  // namespace

double Across::size() const { return std::sqrt(horizontal * horizontal + vertical * vertical); }

bool Beam::can_bear() const {
  return !stretches.empty() && second_bearing > first_bearing &&
         std::all_of(stretches.begin(), stretches.end(), [](const BeamStretch& s) { return s.rigidity > 0; });
}

std::vector<double> Beam::places(std::vector<double> others) const {
  double x = begin;
  others.insert(others.end(), {x, first_bearing, second_bearing});
  for (const BeamStretch& stretch : stretches) {
    x += std::max(0.0, stretch.length);
    others.push_back(x);
  }
  std::sort(others.begin(), others.end());
  others.erase(std::unique(others.begin(), others.end()), others.end());
  return others;
}

std::size_t Beam::stretch_at(double x) const {
  double end = begin;
  for (std::size_t i = 0; i + 1 < stretches.size(); ++i) {
    end += std::max(0.0, stretches[i].length);
    if (x < end) return i;
  }
  return stretches.size() - 1;
}

Across BentPiece::moment(double s) const { return moment_here + s * shear + s * s / 2 * load_per_length; }

Across BentPiece::slope(double s) const {
  return slope_here + s / rigidity * (moment_here + s / 2 * shear + s * s / 6 * load_per_length);
}

Across BentPiece::deflection(double s) const {
  return deflection_here + s * slope_here +
         s * s / rigidity * (0.5 * moment_here + s / 6 * shear + s * s / 24 * load_per_length);
}

Across BentBeam::moment(double x) const {
  double s = 0;
  const BentPiece* piece = piece_at(*this, x, s);
  return piece ? piece->moment(s) : boundless;
}

Across BentBeam::slope(double x) const {
  double s = 0;
  const BentPiece* piece = piece_at(*this, x, s);
  return piece ? piece->slope(s) : boundless;
}

Across BentBeam::deflection(double x) const {
  double s = 0;
  const BentPiece* piece = piece_at(*this, x, s);
  return piece ? piece->deflection(s) : boundless;
}

BentBeam bend_beam(const Beam& beam, const std::vector<BeamLoad>& loads) {
  if (!beam.can_bear()) return unbearable(beam);
  BentBeam bent;
  find_reactions(beam, loads, bent);
  std::vector<BeamLoad> forces = loads;
  forces.push_back({beam.first_bearing, beam.first_bearing, bent.first_reaction});
  forces.push_back({beam.second_bearing, beam.second_bearing, bent.second_reaction});
  std::vector<double> ends;
  for (const BeamLoad& load : loads) ends.insert(ends.end(), {load.begin, std::max(load.begin, load.end)});
  bend_pieces(beam, beam.places(ends), forces, bent);
  hang_on_bearings(beam, bent);
  if (!is_finite(bent)) return unbearable(beam);
  bent.first_slope = bent.slope(beam.first_bearing).size();
  bent.second_slope = bent.slope(beam.second_bearing).size();
  find_peaks(bent);
  return bent;
}

}  // namespace holdback::physics
