#include "holdback/model/measure_method.hpp"

#include <algorithm>
#include <numbers>

namespace holdback {

namespace {

using Q = Quantity;

constexpr double degree = std::numbers::pi / 180;
constexpr double hertz = 2 * std::numbers::pi;

constexpr ReadingKey span{
    "span", Q::short_length, Due::always, 1e-3, false, 0, {}, "free length between the two rollers"};
constexpr ReadingKey modulus{"modulus", Q::modulus, Due::optional, 0, true, 0.1, {}, "of the web, along the machine"};
constexpr ReadingKey caliper{"caliper", Q::caliper, Due::optional, 0, true, 0.05, {}, "thickness of the web"};
constexpr ReadingKey width{"width", Q::short_length, Due::web, 1e-3, false, 0, {}, "of the web"};
constexpr ReadingKey width_alone{
    "width", Q::short_length, Due::optional, 1e-3, false, 0, {}, "of the web, for the tension per width"};
constexpr ReadingKey basis_weight{"basis_weight", Q::basis_weight, Due::web, 0, true, 0.03, {}, "of the web"};

std::vector<MeasureMethod> all() {
  return {
      {"push",
       "Push the span sideways",
       {span,
        {"push", Q::short_length, Due::always, 1e-3, true, 0, {}, "how far the bar moves the web from its place"},
        {"force", Q::force, Due::always, 0.1, true, 0.01, {}, "on the gauge, square to the web"},
        {"place",
         Q::short_length,
         Due::optional,
         1e-3,
         false,
         0,
         {},
         "where it is pushed, from one roller; otherwise the middle"},
        {"held",
         Q::short_length,
         Due::optional,
         5e-3,
         false,
         0,
         {},
         "web between the places that hold it fast; otherwise the span"},
        modulus,
        caliper,
        width_alone}},
      {"sag",
       "Let the span hang",
       {span,
        {"sag", Q::short_length, Due::always, 1e-3, true, 0, {}, "in the middle, below the line of both ends"},
        basis_weight,
        width}},
      {"pluck",
       "Pluck the span",
       {span,
        {"frequency", Q::frequency, Due::always, 0.2 * hertz, true, 0.01, {}, "of the span; or a recording gives it"},
        basis_weight,
        width,
        {"partial", Q::count, Due::optional, 0, true, 0, 1.0, "which partial the frequency is, 1 the lowest", true},
        {"air", Q::number, Due::optional, 0, true, 0.1, 1.0,
         "yes counts the air that the web carries, no leaves it out", false, true},
        {"air_density", Q::density, Due::optional, 0, true, 0.03, 1.2,
         "of the air around; the stand's site gives it"}}},
      {"pull",
       "Pull the web with a scale, roll turning slowly",
       {{"pull", Q::force, Due::always, 1, true, 0.03, {}, "brake on, the way the web unwinds"},
        {"back", Q::force, Due::optional, 1, true, 0.03, {}, "brake on, the other way"},
        {"released", Q::force, Due::optional, 1, true, 0.03, {}, "brake off, the way the web unwinds"},
        {"released_back", Q::force, Due::optional, 1, true, 0.03, {}, "brake off, the other way"},
        {"breakaway", Q::force, Due::optional, 1, true, 0.03, {}, "brake on, as the roll begins to turn"},
        {"diameter", Q::short_length, Due::optional, 1e-3, false, 0, {}, "of the roll where the web leaves it"},
        {"at_diameter",
         Q::short_length,
         Due::optional,
         1e-3,
         false,
         0,
         {},
         "diameter whose tension is asked for; otherwise the same"},
        width_alone}},
      {"cell",
       "Read the load-cell roller",
       {{"reading", Q::force, Due::always, 1, true, 0.005, {}, "both ends of the roller together", false, false, true},
        {"wrap", Q::angle, Due::always, degree, false, 0, {}, "angle over which the web touches the roller"},
        {"tare", Q::force, Due::optional, 1, true, 0, {}, "reading without a web", false, false, true},
        {"axis", Q::angle, Due::optional, degree, false, 0, 0.0,
         "between the measuring axis and the line that halves both runs", false, false, true},
        {"roller_mass", Q::mass, Due::optional, 0, true, 0.02, {}, "instead of a tare, with the tilt"},
        {"tilt",
         Q::angle,
         Due::optional,
         degree,
         false,
         0,
         {},
         "between the measuring axis and straight down, for the roller's weight",
         false,
         false,
         true},
        width_alone}},
  };
}

}  // namespace

const std::vector<MeasureMethod>& measure_methods() {
  static const std::vector<MeasureMethod> methods = all();
  return methods;
}

const MeasureMethod* measure_method(std::string_view key) {
  const auto& methods = measure_methods();
  const auto found =
      std::find_if(methods.begin(), methods.end(), [key](const MeasureMethod& method) { return method.key == key; });
  return found == methods.end() ? nullptr : &*found;
}

const ReadingKey* reading_key(const MeasureMethod& method, std::string_view key) {
  const auto found =
      std::find_if(method.keys.begin(), method.keys.end(), [key](const ReadingKey& one) { return one.key == key; });
  return found == method.keys.end() ? nullptr : &*found;
}

std::string measure_method_words() {
  std::string words;
  const auto& methods = measure_methods();
  for (std::size_t i = 0; i < methods.size(); ++i)
    words += (i == 0 ? "" : i + 1 == methods.size() ? " or " : ", ") + std::string(methods[i].key);
  return words;
}

}  // namespace holdback
