#include "holdback/field/pluck_partials.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace holdback::field {

namespace {

constexpr double near_enough = 0.03;  // of a frequency: how far off its place a partial may stand
constexpr double step = 0.005;        // of the power
constexpr double more = 0.05;         // of what is heard: what a less simple reading of the tones must account for
constexpr double as_much = 0.01;      // of what is heard
constexpr int most_partials = 12;
constexpr int most_missing = 2;  // partials below the lowest that is heard

/// One reading of the tones: that at `first` is partial `number`, and the others go with it.
struct Reading {
  Partials partials{};
  double heard{};   // levels of the tones that it accounts for
  double misfit{};  // relative, weighed by level
  bool loudest{};   // is among them
};

std::size_t loudest_of(const std::vector<Tone>& tones) {
  const auto most =
      std::max_element(tones.begin(), tones.end(), [](const Tone& a, const Tone& b) { return a.level < b.level; });
  return static_cast<std::size_t>(most - tones.begin());
}

/// Partial of a tone; 0 where it is none.
int place_of(const Tone& tone, double first, double power, double line) {
  const int n = static_cast<int>(std::lround(std::pow(tone.frequency / first, 1 / power)));
  if (n < 1 || n > most_partials) return 0;
  const double off = std::abs(tone.frequency / (first * std::pow(n, power)) - 1);
  return off <= std::max(near_enough, line / 4 / tone.frequency) ? n : 0;
}

Reading reading_at(const std::vector<Tone>& tones, std::size_t at, int number, double power, double line) {
  Reading out;
  out.partials = {std::vector<int>(tones.size(), 0), at, number, power, 0, 0};
  const double first = tones[at].frequency / std::pow(number, power);
  std::vector<std::size_t> holder(most_partials + 1, tones.size());  // the louder of two tones at one place
  for (std::size_t i = at; i < tones.size(); ++i) {
    const int n = i == at ? number : place_of(tones[i], first, power, line);
    if (n < number || (n == number && i != at)) continue;
    std::size_t& held = holder[static_cast<std::size_t>(n)];
    if (held < tones.size() && tones[held].level >= tones[i].level) continue;
    held = i;
  }
  for (int n = number; n <= most_partials; ++n) {
    const std::size_t i = holder[static_cast<std::size_t>(n)];
    if (i == tones.size()) continue;
    out.partials.of[i] = n;
    out.heard += tones[i].level;
    out.misfit += tones[i].level * std::abs(tones[i].frequency / (first * std::pow(n, power)) - 1);
  }
  out.loudest = out.partials.of[loudest_of(tones)] > 0;
  return out;
}

bool better(const Reading& a, const Reading& b, double all) {
  if (a.loudest != b.loudest) return a.loudest;
  if (std::abs(a.heard - b.heard) > as_much * all) return a.heard > b.heard;
  return a.misfit < b.misfit;
}

/// The power at which a tone as partial `number` accounts for the most.
Reading best_at(const std::vector<Tone>& tones, std::size_t at, int number, PartialSpread spread, double line,
                double all) {
  Reading best = reading_at(tones, at, number, spread.least, line);
  for (int k = 1; spread.least + k * step <= spread.most + step / 2; ++k) {
    const Reading other = reading_at(tones, at, number, spread.least + k * step, line);
    if (better(other, best, all)) best = other;
  }
  return best;
}

bool has(const Partials& partials, int n) {
  return std::find(partials.of.begin(), partials.of.end(), n) != partials.of.end();
}

/// How many of the lowest partials follow on each other; of odd ones every other, where a tap in the middle rings only
/// those.
int row_of(const Partials& partials) {
  int longest = 1;
  for (int apart = 1; apart <= 1 + partials.number % 2; ++apart) {
    int n = partials.number;
    int row = 1;
    while (has(partials, n += apart)) ++row;
    longest = std::max(longest, row);
  }
  return longest;
}

/// Whether a tone below the loudest may be the first partial: the loudest is its second or third, and the others are
/// not just those of its third, among which it would stand alone.
bool plausible_first(const Partials& partials, std::size_t loudest) {
  const int own = partials.of[loudest];
  if (own < 2 || own > 3) return false;
  int common = 0;
  std::size_t others = 0;
  for (std::size_t i = partials.first + 1; i < partials.of.size(); ++i) {
    if (partials.of[i] == 0) continue;
    common = std::gcd(common, partials.of[i]);
    ++others;
  }
  return others == 1 || common < 3;
}

/// With the lowest tone as the first partial: the loudest one, or one below it that accounts for more.
Reading from_the_first(const std::vector<Tone>& tones, PartialSpread spread, double line, double all) {
  const std::size_t loudest = loudest_of(tones);
  const Reading simplest = best_at(tones, loudest, 1, spread, line, all);
  Reading best = simplest;
  for (std::size_t at = loudest; at-- > 0;) {
    const Reading lower = best_at(tones, at, 1, spread, line, all);
    if (!plausible_first(lower.partials, loudest) || lower.heard < simplest.heard + more * all) continue;
    const double gain = best.partials.first == loudest ? 0 : as_much * all;
    if (lower.heard > best.heard + gain) best = lower;
  }
  return best;
}

}  // namespace

Partials partials_of(const std::vector<Tone>& tones, PartialSpread spread, double line) {
  double all = 0;
  for (const Tone& tone : tones) all += tone.level;
  Reading best = from_the_first(tones, spread, line, all);
  const double simple = best.heard;
  int lower = 0;
  double lower_first = 0;
  for (int number = 2; number <= 1 + most_missing; ++number)
    for (std::size_t at = 0; at < tones.size(); ++at) {
      const Reading missing = best_at(tones, at, number, spread, line, all);
      if (!missing.loudest || missing.heard < std::max(simple, best.heard) + more * all) continue;
      const int row = row_of(missing.partials);
      if (row >= 3) best = missing;
      if (row == 2 && lower == 0) {
        lower = number;
        lower_first = tones[at].frequency / std::pow(number, missing.partials.power);
      }
    }
  if (best.partials.number == 1) {
    best.partials.lower = lower;
    best.partials.lower_first = lower_first;
  }
  return best.partials;
}

}  // namespace holdback::field
