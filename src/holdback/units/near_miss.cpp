#include "holdback/units/near_miss.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <utility>
#include <vector>

#include "holdback/units/text.hpp"
#include "holdback/units/unit_table.hpp"

namespace holdback::units {
namespace {

// Names that people do write, where the nearest spelling would mislead or say too little.
struct Advice {
  std::string_view name;
  std::string_view text;
};
constexpr Advice advice[] = {
    {"C", "write degC or °C"},
    {"F", "write degF or °F"},
    {"psia", "pressures are gauge pressures here: subtract the pressure of the air and write psi"},
    {"bara", "pressures are gauge pressures here: subtract the pressure of the air and write bar"},
    {"#", "write lb for a mass and lbf for a force"},
    {"ton", "a ton is 2000 lb, 2240 lb or 1000 kg: write lb, or t for 1000 kg"},
    {"tons", "a ton is 2000 lb, 2240 lb or 1000 kg: write lb, or t for 1000 kg"},
    {"ga", "100 gauge of film are 1 mil: write mil"},
    {"gauge", "100 gauge of film are 1 mil: write mil"},
    {"ream", "write out the area of the ream, as in lb/3000 ft2"},
    {"inlb", "did you mean 'in*lbf'?"},
    {"lbin", "did you mean 'in*lbf'?"},
    {"inlbf", "did you mean 'in*lbf'?"},
    {"lbfin", "did you mean 'in*lbf'?"},
    {"ftlb", "did you mean 'ft*lbf'?"},
    {"lbft", "did you mean 'ft*lbf'?"},
    {"ftlbf", "did you mean 'ft*lbf'?"},
    {"lbfft", "did you mean 'ft*lbf'?"},
    {"hph", "did you mean 'hp*h'?"},
    {"kNm", "did you mean 'kN*m'?"},
    {"Ncm", "did you mean 'N*cm'?"},
    {"Nmm", "did you mean 'N*mm'?"},
};

std::string lower(std::string_view text) {
  std::string out(text);
  std::transform(out.begin(), out.end(), out.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return out;
}

// How far a name may be off: one edit in a short name, two in a longer one; none in a single letter.
std::size_t tolerance(std::string_view name) {
  if (name.size() < 2) return 0;
  return name.size() < 5 ? 1 : 2;
}

// The nearest name in the table; the same letters in another case count as nearest. Empty if none is near.
std::string_view nearest(std::string_view name) {
  std::string_view best;
  std::size_t least = tolerance(name) + 1;
  for (const Unit& unit : unit_table()) {
    for (const auto candidate : names_of(unit)) {
      const bool same_letters = lower(candidate) == lower(name);
      const auto distance = same_letters ? 0 : edit_distance(name, candidate);
      if (distance >= least || distance >= candidate.size()) continue;
      least = distance;
      best = candidate;
    }
  }
  return best;
}

}  // namespace

std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> two_back(b.size() + 1);
  std::vector<std::size_t> last(b.size() + 1);
  std::vector<std::size_t> row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) row[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    two_back = std::exchange(last, row);
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t replace = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      row[j] = std::min({replace, last[j] + 1, row[j - 1] + 1});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) row[j] = std::min(row[j], two_back[j - 2] + 1);
    }
  }
  return row[b.size()];
}

std::string unknown_unit(std::string_view name) {
  const auto* known =
      std::find_if(std::begin(advice), std::end(advice), [name](const Advice& a) { return a.name == name; });
  const auto sentence = fmt::format("{} is not a known unit", quoted(name));
  if (known != std::end(advice)) return fmt::format("{}; {}", sentence, known->text);
  const auto near = nearest(name);
  return near.empty() ? sentence : fmt::format("{}; did you mean '{}'?", sentence, near);
}

}  // namespace holdback::units
