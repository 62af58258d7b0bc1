// The ways to find the tension on site and what each of them reads. The reader of readings, the help, the instruction
// and the page's form are all derived from this one table.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "holdback/model/quantity.hpp"

namespace holdback {

/// Whether a reading must be there.
enum class Due {
  always,    // nothing is found without it
  web,       // the web's, from the job of the stand; else to be read
  optional,  // makes the answer better; `otherwise` stands in where it is given
};

/// One thing that is read. Instruments and shares are common practice, no source: what is taken when nobody says.
struct ReadingKey {
  std::string_view key{};  // "force"
  Quantity kind{};
  Due due{};
  double step{};                      // [SI] ≥ 0, what the usual instrument shows
  bool by_digits{};                   // the digits written tell what it showed; else they only may make `step` finer
  double share{};                     // [1] ± of the value, for the web's data and for foretelling
  std::optional<double> otherwise{};  // [SI] value when it is not read
  std::string_view help{};            // one line
  std::string_view sample{};          // a value of about the size that is met, as it is written in a call: "10.0mm"
  bool whole{};                       // a whole number from 1 on
  bool yes_or_no{};                   // 1 or 0
  bool any_sign{};                    // may be negative or zero
};

/// One way to find the tension.
struct MeasureMethod {
  std::string_view key{};    // "push"
  std::string_view title{};  // "Push the span sideways"
  std::vector<ReadingKey> keys{};
};

/// Every method, in the order of the help.
const std::vector<MeasureMethod>& measure_methods();

/// The method of that name; null when there is none.
const MeasureMethod* measure_method(std::string_view key);

/// The reading of that name; null when the method has none.
const ReadingKey* reading_key(const MeasureMethod& method, std::string_view key);

/// "push, sag, pluck, pull or cell".
std::string measure_method_words();

/// Where the resolution of a reading is known from.
enum class ResolutionFrom { stated, digits, instrument };

/// What was read of one key, once or several times.
struct KeyReadings {
  std::string key{};
  std::vector<double> values{};  // [SI]
  std::string text{};            // as written, the first of them
  double resolution{};           // [SI] ≥ 0
  ResolutionFrom from{};
  double limit{};  // [SI] ≥ 0, ± as written; the widest of them
};

}  // namespace holdback
