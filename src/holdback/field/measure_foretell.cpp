#include "holdback/field/measure_foretell.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "holdback/physics/measure.hpp"
#include "holdback/physics/span.hpp"

namespace holdback::field {

namespace {

constexpr double hertz = 2 * std::numbers::pi;
constexpr double right_angle = std::numbers::pi / 2;
constexpr double drag_share = 0.05;      // of the pull; common practice, no source
constexpr double roller_share = 0.3;     // tare over tension; common practice, no source
constexpr double push_share = 1.0 / 60;  // of the span
constexpr double least_push = 5e-3;      // [m]
constexpr double most_push = 30e-3;      // [m]
constexpr double spread_doubt = 0.04;    // of the partials' power, for frames nearby; common practice, no source

std::optional<double> known(const MeasureInput& input, const std::string& key) {
  const auto read = read_value(input, key);
  return read || !input.web ? read : web_value(*input.web, key);
}

/// What the question already says of a key is kept, else a value is made up with the usual resolution.
class Maker {
 public:
  Maker(const MeasureInput& input, const MeasureMethod& method) : from_(input), method_(method) {
    out_.input = input;
    out_.input.method = &method;
    out_.input.readings.clear();
    out_.input.sound.reset();
    for (const KeyReadings& one : input.readings) {
      const ReadingKey* key = reading_key(method, one.key);
      if (key != nullptr && (key->step == 0 || one.key == "width" || one.key == "held"))
        out_.input.readings.push_back(one);
    }
  }
  void make(const std::string& key, double value) {
    const ReadingKey* row = reading_key(method_, key);
    out_.input.readings.push_back({key, {value}, {}, row->step, ResolutionFrom::instrument, 0});
  }
  Foretold cannot(const std::string& why) {
    out_.cannot.text = why;
    return out_;
  }
  std::optional<double> known(const std::string& key) const { return field::known(from_, key); }
  std::optional<double> span() const {
    const auto read = read_value(from_, "span");
    return read ? read : from_.span;
  }
  Foretold done() { return out_; }

 private:
  const MeasureInput& from_;
  const MeasureMethod& method_;
  Foretold out_{};
};

Foretold foretell_push(Maker make, double tension) {
  const auto span = make.span();
  if (!span) return make.cannot("the length of the span is not known");
  const auto modulus = make.known("modulus");
  const auto caliper = make.known("caliper");
  const auto width = make.known("width");
  if (!modulus || !caliper || !width) return make.cannot("modulus, caliper and width of the web are not all known");
  const double push = std::min(std::clamp(push_share * *span, least_push, most_push), *span / 4);
  const physics::PushedSpan pushed{*span, *span / 2, std::max(*span, make.known("held").value_or(*span))};
  make.make("span", *span);
  make.make("push", push);
  make.make("force", physics::push_force(pushed, push, tension, *modulus * *caliper * *width));
  return make.done();
}

Foretold foretell_sag(Maker make, double tension) {
  const auto span = make.span();
  if (!span) return make.cannot("the length of the span is not known");
  const auto mass = make.known("basis_weight");
  const auto width = make.known("width");
  if (!mass || !width) return make.cannot("basis weight and width of the web are not both known");
  const double sag = physics::catenary_sag(physics::web_weight(*mass, *width), *span, tension);
  if (!std::isfinite(sag)) return make.cannot("the web is too heavy for so little tension over this span");
  if (sag < 0.3e-3) return make.cannot("the web would sag by less than a ruler shows");
  make.make("span", *span);
  make.make("sag", sag);
  return make.done();
}

Foretold foretell_pluck(Maker make, const MeasureInput& input, double tension) {
  const auto span = make.span();
  if (!span) return make.cannot("the length of the span is not known");
  const auto mass = make.known("basis_weight");
  const auto width = make.known("width");
  if (!mass || !width) return make.cannot("basis weight and width of the web are not both known");
  const double air = physics::carried_air(*width, *span, input.air_density.value_or(1.2));
  make.make("span", *span);
  make.make("frequency", hertz * physics::span_frequency(tension / *width, *mass + air, *span));
  return make.done();
}

Foretold foretell_pull(Maker make, double tension) {
  make.make("pull", tension);
  make.make("back", tension);
  make.make("released", drag_share * tension);
  return make.done();
}

Foretold foretell_cell(Maker make, const MeasureInput& input, double tension) {
  const double wrap = read_value(input, "wrap").value_or(input.cell_wrap.value_or(right_angle));
  const double tare = roller_share * tension;
  make.make("wrap", wrap);
  make.make("axis", 0);
  make.make("tare", tare);
  make.make("reading", physics::cell_resultant(tension, wrap) + tare);
  return make.done();
}

}  // namespace

std::optional<double> read_value(const MeasureInput& input, const std::string& key) {
  for (const KeyReadings& one : input.readings)
    if (one.key == key && !one.values.empty()) return numerics::mean_of(one.values);
  return std::nullopt;
}

PartialSpread partial_spread(const MeasureInput& input) {
  const auto read = read_value(input, "span");
  const auto span = read ? read : input.span;
  const auto mass = known(input, "basis_weight");
  const auto width = known(input, "width");
  const double air = read_value(input, "air").value_or(1);
  const double density = read_value(input, "air_density").value_or(input.air_density.value_or(1.2));
  const bool all = span && mass && width && *span > 0 && *mass > 0 && *width > 0 && density > 0;
  if (!all) return {};
  const auto frequency = [&](int n) {
    const double carried = air * physics::carried_air(*width, *span / n, density);
    return physics::span_frequency(1, *mass + carried, *span, n);
  };
  PartialSpread out{1.5, 1};
  for (int n = 2; n <= 6; ++n) {
    const double power = std::log(frequency(n) / frequency(1)) / std::log(n);
    out = {std::min(out.least, power), std::max(out.most, power)};
  }
  return {std::clamp(out.least - spread_doubt, 1.0, 1.5), std::clamp(out.most + spread_doubt, 1.0, 1.5)};
}

Foretold foretell(const MeasureInput& input, const MeasureMethod& method, double tension) {
  Maker make(input, method);
  if (method.key == "push") return foretell_push(make, tension);
  if (method.key == "sag") return foretell_sag(make, tension);
  if (method.key == "pluck") return foretell_pluck(make, input, tension);
  if (method.key == "pull") return foretell_pull(make, tension);
  return foretell_cell(make, input, tension);
}

}  // namespace holdback::field
