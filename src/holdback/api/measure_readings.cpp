#include "holdback/api/measure_readings.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <map>
#include <optional>
#include <set>

#include "holdback/api/request_problem.hpp"
#include "holdback/files/suggest.hpp"
#include "holdback/files/text_file.hpp"
#include "holdback/units/digits.hpp"
#include "holdback/units/units.hpp"

namespace holdback::api {

namespace {

constexpr std::string_view resolution_word = ".resolution";
constexpr std::size_t most_readings = 1000;

Problem problem_of(const Reading& reading, const std::string& what, const std::string& accepted,
                   Severity severity = Severity::error) {
  Problem problem = request_problem(what, reading.key, reading.text, accepted);
  problem.severity = severity;
  return problem;
}

bool ends_with(std::string_view text, std::string_view end) {
  return text.size() > end.size() && text.substr(text.size() - end.size()) == end;
}

/// A text in its value and its limits; no limits when none are written.
struct Parted {
  std::string value{};
  std::optional<std::string> limit{};
};

Parted parted(const std::string& text) {
  for (const std::string sign : {"±", "+/-", "+-"}) {
    const auto at = text.find(sign);
    if (at != std::string::npos && at > 0)
      return {std::string(files::trimmed(text.substr(0, at))),
              std::string(files::trimmed(text.substr(at + sign.size())))};
  }
  return {std::string(files::trimmed(text)), std::nullopt};
}

/// A number in a text: its digits, and the unit after it.
struct Digits {
  std::string number{};  // without a sign
  std::string unit{};
};

std::optional<Digits> digits_of(std::string_view text) {
  while (!text.empty() && (text.front() == '-' || text.front() == '+')) text.remove_prefix(1);
  const auto number = units::scan_number(text);
  if (!number) return std::nullopt;
  return Digits{std::string(text.substr(0, number->size)), std::string(files::trimmed(text.substr(number->size)))};
}

/// One step of the last digit written, in the unit it is written in: "6.38" → 0.01, "2e3" → 1000.
double last_digit(const std::string& number) {
  const auto exponent_at = number.find_first_of("eE");
  const std::string mantissa = number.substr(0, exponent_at);
  const auto point = mantissa.find('.');
  const auto decimals = point == std::string::npos ? std::size_t{0} : mantissa.size() - point - 1;
  const int exponent = exponent_at == std::string::npos ? 0 : std::atoi(number.c_str() + exponent_at + 1);
  return std::pow(10.0, std::clamp(exponent, -300, 300) - static_cast<int>(decimals));
}

/// A reading as a call takes it: "force=6.4N".
std::string call_of(const ReadingKey& key) { return fmt::format("{}={}", key.key, key.sample); }

/// Whether a value [SI] is zero or within what machines have; so that no product of readings overflows.
bool plausible(double value) { return value == 0 || (std::abs(value) > 1e-15 && std::abs(value) < 1e15); }

/// What reads the texts of one method.
class Reader {
 public:
  Reader(const MeasureMethod& method, Problems& problems) : method_(method), problems_(problems) {}

  void take(const Reading& reading) {
    std::string name = reading.key;
    const bool resolution = ends_with(name, resolution_word);
    if (resolution) name.resize(name.size() - resolution_word.size());
    std::replace(name.begin(), name.end(), '-', '_');
    const ReadingKey* key = reading_key(method_, name);
    if (key == nullptr) {
      unknown(reading, name);
    } else if (resolution) {
      state_resolution(reading, *key);
    } else if (key->yes_or_no) {
      take_word(reading, *key);
    } else {
      take_value(reading, *key);
    }
  }

  std::vector<KeyReadings> done() {
    std::vector<KeyReadings> out;
    for (const ReadingKey& key : method_.keys) {
      const auto found =
          std::find_if(all_.begin(), all_.end(), [&](const KeyReadings& one) { return one.key == key.key; });
      if (found == all_.end()) continue;
      settle(*found, key);
      if (!found->values.empty()) out.push_back(*found);
    }
    return out;
  }

 private:
  void unknown(const Reading& reading, const std::string& name) {
    std::vector<std::string> known;
    for (const ReadingKey& key : method_.keys) known.emplace_back(key.key);
    const std::string near = files::nearest(name, known);
    std::string list;
    for (const auto& one : known) list += (list.empty() ? "" : ", ") + one;
    problems_.push_back(problem_of(reading,
                                   fmt::format("{} is not a reading of {}{}", files::clipped(name), method_.key,
                                               near.empty() ? "" : "; did you mean " + near + "?"),
                                   list + "; with .resolution behind a key, what its instrument shows"));
  }

  std::optional<double> parsed(const Reading& reading, const std::string& text, Quantity kind,
                               const std::string& accepted) {
    const auto read = units::parse(text, kind);
    if (const auto* fault = std::get_if<units::Fault>(&read)) {
      problems_.push_back(problem_of(reading, fault->what, accepted));
      return std::nullopt;
    }
    return std::get<double>(read);
  }

  void state_resolution(const Reading& reading, const ReadingKey& key) {
    const std::string accepted = units::accepted_examples(key.kind);
    const auto step = parsed(reading, reading.text, key.kind, accepted);
    if (!step) return;
    if (!(*step > 0) || !plausible(*step)) {
      problems_.push_back(problem_of(reading, "a resolution is greater than zero and within all measure", accepted));
      return;
    }
    KeyReadings& one = of(key);
    one.resolution = *step;
    one.from = ResolutionFrom::stated;
    stated_.insert(one.key);
  }

  void take_word(const Reading& reading, const ReadingKey& key) {
    const bool yes = reading.text == "yes" || reading.text == "1";
    if (!yes && reading.text != "no" && reading.text != "0") {
      problems_.push_back(problem_of(reading, std::string(key.key) + " is yes or no", "yes, no"));
      return;
    }
    KeyReadings& one = of(key);
    one.values = {yes ? 1.0 : 0.0};
    one.text = reading.text;
  }

  void take_value(const Reading& reading, const ReadingKey& key) {
    Parted text = parted(reading.text);
    auto digits = digits_of(text.value);
    const auto limit_digits = text.limit ? digits_of(*text.limit) : std::nullopt;
    if (digits && digits->unit.empty() && limit_digits && limit_digits->unit != "%") {  // "6.4 ± 0.2 N"
      digits->unit = limit_digits->unit;
      text.value += " " + digits->unit;
    }
    const auto value = parsed(reading, text.value, key.kind, call_of(key));
    if (!value) return;
    if (!plausible(*value)) {
      problems_.push_back(problem_of(reading, "no gauge shows so large or so small a value", call_of(key)));
      return;
    }
    KeyReadings& one = of(key);
    if (one.values.size() >= most_readings) return tell_of_too_many(reading, one.key);
    if (one.values.empty()) one.text = reading.text;
    if (text.limit) take_limit(reading, key, one, *value, *text.limit, digits ? digits->unit : "");
    one.values.push_back(*value);
    if (digits) note_digits(reading, key, one, *digits);
  }

  void tell_of_too_many(const Reading& reading, const std::string& key) {
    if (!full_.insert(key).second) return;
    problems_.push_back(problem_of(
        reading, fmt::format("more than {} readings of {}: those from this one on are left out", most_readings, key),
        fmt::format("at most {} readings of one key", most_readings), Severity::warning));
  }

  void take_limit(const Reading& reading, const ReadingKey& key, KeyReadings& one, double value, std::string limit,
                  const std::string& unit) {
    const auto digits = digits_of(limit);
    const bool share = digits && digits->unit == "%";
    if (digits && digits->unit.empty()) limit += " " + unit;  // "6.4 N ± 0.2"
    const auto size = parsed(reading, limit, share ? Quantity::ratio : key.kind, "such as " + call_of(key) + "±3%");
    if (!size) return;
    if (*size < 0 || !plausible(*size)) {
      problems_.push_back(
          problem_of(reading, "limits are neither negative nor beyond all measure", "such as " + call_of(key) + "±3%"));
      return;
    }
    one.limit = std::max(one.limit, share ? *size * std::abs(value) : *size);
  }

  /// The step of the last digit [SI]; the finest of several readings, since a zero at the end is often left out.
  void note_digits(const Reading& reading, const ReadingKey& key, KeyReadings& one, const Digits& digits) {
    if (!units_.emplace(one.key, digits.unit).second && units_.find(one.key)->second != digits.unit &&
        warned_.insert(one.key).second)
      problems_.push_back(problem_of(reading,
                                     fmt::format("the readings of {} are in different units, {} and {}; is that meant?",
                                                 one.key, units_.find(one.key)->second, digits.unit),
                                     "one unit for all of them", Severity::warning));
    if (key.whole || stated_.count(one.key) > 0) return;
    const auto factor = units::parse_unit(digits.unit, key.kind);
    if (!std::holds_alternative<units::UnitValue>(factor)) return;
    const double step = last_digit(digits.number) * std::get<units::UnitValue>(factor).factor;
    if (!(step > 0) || !plausible(step)) return;
    auto& finest = digits_[one.key];
    if (finest == 0 || step < finest) finest = step;
  }

  /// Stated, else by the digits, else by the usual instrument.
  void settle(KeyReadings& one, const ReadingKey& key) {
    if (stated_.count(one.key) > 0 || key.yes_or_no || key.whole) return;
    const auto found = digits_.find(one.key);
    const double digits = found == digits_.end() ? 0 : found->second;
    const bool usual = key.step > 0 && (digits == 0 || (!key.by_digits && digits > key.step));
    one.resolution = usual ? key.step : digits;
    one.from = usual ? ResolutionFrom::instrument : ResolutionFrom::digits;
    // Limits are told for the reading as a whole: what is written behind it says no more.
    if (one.limit > 0) one.resolution = std::min(one.resolution, one.limit / 5);
  }

  KeyReadings& of(const ReadingKey& key) {
    for (KeyReadings& one : all_)
      if (one.key == key.key) return one;
    all_.push_back({std::string(key.key), {}, {}, 0, ResolutionFrom::instrument, 0});
    return all_.back();
  }

  const MeasureMethod& method_;
  Problems& problems_;
  std::vector<KeyReadings> all_{};
  std::set<std::string> stated_{};
  std::set<std::string> warned_{};
  std::set<std::string> full_{};
  std::map<std::string, std::string> units_{};
  std::map<std::string, double> digits_{};
};

}  // namespace

std::vector<KeyReadings> read_readings(const MeasureMethod& method, const std::vector<Reading>& readings,
                                       Problems& problems) {
  Reader reader(method, problems);
  for (const Reading& reading : readings) reader.take(reading);
  return reader.done();
}

}  // namespace holdback::api
