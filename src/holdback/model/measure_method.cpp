#include "holdback/model/measure_method.hpp"

#include <algorithm>
#include <numbers>

namespace holdback {

namespace {

using Q = Quantity;

constexpr double degree = std::numbers::pi / 180;
constexpr double hertz = 2 * std::numbers::pi;

constexpr auto none = std::nullopt;

constexpr ReadingKey span{
    "span", Q::short_length, Due::always, 1e-3, false, 0, none, "free length between the two rollers", "1.2m"};
constexpr ReadingKey modulus{"modulus", Q::modulus, Due::optional, 0, true, 0.1, none, "of the web, along the machine",
                             "4.5GPa"};
constexpr ReadingKey caliper{"caliper", Q::caliper, Due::optional, 0, true, 0.05, none, "thickness of the web", "12um"};
constexpr ReadingKey width{"width", Q::short_length, Due::web, 1e-3, false, 0, none, "of the web", "600mm"};
constexpr ReadingKey width_alone{
    "width", Q::short_length, Due::optional, 1e-3, false, 0, none, "of the web, for the tension per width", "600mm"};
constexpr ReadingKey basis_weight{"basis_weight", Q::basis_weight, Due::web, 0, true, 0.03,
                                  none,           "of the web",    "80g/m2"};

MeasureMethod push() {
  return {"push",
          "Push the span sideways",
          {span,
           {"push", Q::short_length, Due::always, 1e-3, true, 0, none, "how far the bar moves the web from its place",
            "10.0mm"},
           {"force", Q::force, Due::always, 0.1, true, 0.01, none, "on the gauge, square to the web", "6.4N"},
           {"place", Q::short_length, Due::optional, 1e-3, false, 0, none,
            "where it is pushed, from one roller; otherwise the middle", "0.4m"},
           {"held", Q::short_length, Due::optional, 5e-3, false, 0, none,
            "web between the places that hold it fast; otherwise the span", "3.5m"},
           modulus,
           caliper,
           width_alone}};
}

MeasureMethod sag() {
  return {"sag",
          "Let the span hang",
          {span,
           {"sag", Q::short_length, Due::always, 1e-3, true, 0, none, "in the middle, below the line of both ends",
            "3.5mm"},
           basis_weight,
           width}};
}

MeasureMethod pluck() {
  return {
      "pluck",
      "Pluck the span",
      {span,
       {"frequency", Q::frequency, Due::always, 0.2 * hertz, true, 0.01, none, "of the span; or a recording gives it",
        "24.5Hz"},
       basis_weight,
       width,
       {"partial", Q::count, Due::optional, 0, true, 0, 1.0, "which partial the frequency is, 1 the lowest", "2", true},
       {"air", Q::number, Due::optional, 0, true, 0.1, 1.0, "yes counts the air that the web carries, no leaves it out",
        "yes", false, true},
       {"air_density", Q::density, Due::optional, 0, true, 0.03, 1.2, "of the air around; the stand's site gives it",
        "1.2kg/m3"}}};
}

MeasureMethod pull() {
  return {"pull",
          "Pull the web with a scale, roll turning slowly",
          {{"pull", Q::force, Due::always, 1, true, 0.03, none, "brake on, the way the web unwinds", "95N"},
           {"back", Q::force, Due::optional, 1, true, 0.03, none, "brake on, the other way", "93N"},
           {"released", Q::force, Due::optional, 1, true, 0.03, none, "brake off, the way the web unwinds", "6N"},
           {"released_back", Q::force, Due::optional, 1, true, 0.03, none, "brake off, the other way", "5N"},
           {"breakaway", Q::force, Due::optional, 1, true, 0.03, none, "brake on, as the roll begins to turn", "104N"},
           {"diameter", Q::short_length, Due::optional, 1e-3, false, 0, none, "of the roll where the web leaves it",
            "640mm"},
           {"at_diameter", Q::short_length, Due::optional, 1e-3, false, 0, none,
            "diameter whose tension is asked for; otherwise the same", "200mm"},
           width_alone}};
}

MeasureMethod cell() {
  return {
      "cell",
      "Read the load-cell roller",
      {{"reading", Q::force, Due::always, 1, true, 0.005, none, "both ends of the roller together", "175N", false,
        false, true},
       {"wrap", Q::angle, Due::always, degree, false, 0, none, "angle over which the web touches the roller", "90deg"},
       {"tare", Q::force, Due::optional, 1, true, 0, none, "reading without a web", "62N", false, false, true},
       {"axis", Q::angle, Due::optional, degree, false, 0, 0.0,
        "between the measuring axis and the line that halves both runs", "0deg", false, false, true},
       {"roller_mass", Q::mass, Due::optional, 0, true, 0.02, none, "instead of a tare, with the tilt", "12kg"},
       {"tilt", Q::angle, Due::optional, degree, false, 0, none,
        "between the measuring axis and straight down, for the roller's weight", "30deg", false, false, true},
       width_alone}};
}

std::vector<MeasureMethod> all() { return {push(), sag(), pluck(), pull(), cell()}; }

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
