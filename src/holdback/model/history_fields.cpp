#include "holdback/model/history_fields.hpp"

#include <algorithm>

#include "holdback/model/date.hpp"

namespace holdback {

namespace {

using E = HistoryEntry;
using K = EntryKind;
using Kinds = std::vector<EntryKind>;

HistoryField number(std::string key, std::optional<double> E::*member, Quantity kind, double low, double high, Kinds of,
                    std::string help) {
  return {std::move(key), member, kind, low, high, false, std::move(of), std::move(help)};
}

HistoryField above(HistoryField field) {
  field.above = true;
  return field;
}

HistoryField words(std::string key, std::string E::*member, Kinds of, std::string help) {
  return {std::move(key), member, Quantity::number, 0, 0, false, std::move(of), std::move(help)};
}

std::vector<HistoryField> pad_rows() {
  constexpr double thickest = 0.2;  // [m] no pad is thicker
  return {words("brake", &E::brake, {K::pads, K::wear, K::fit}, "which brake; without it: all, or the thinnest pad"),
          words("pair", &E::pair, {K::pads, K::wear}, "which pair of pads"),
          {"hottest", &E::hottest, Quantity::number, 0, 0, false, {K::wear}, "yes: this pad is the hottest one"},
          number("thickness", &E::thickness, Quantity::short_length, 0, thickest, {K::pads, K::wear},
                 "of the pad as the gauge reads it"),
          number("limit", &E::limit, Quantity::short_length, 0, thickest, {K::pads, K::wear},
                 "thickness at which the maker calls the pad worn out"),
          number("depth", &E::depth, Quantity::short_length, 0, thickest, {K::pads, K::wear},
                 "left above the maker's limit; instead of thickness"),
          above(number("resolution", &E::resolution, Quantity::short_length, 0, 0.01, {K::pads, K::wear},
                       "smallest step of the gauge; else 0.1 mm")),
          words("reason", &E::reason, {K::pads}, "why the pads were changed")};
}

std::vector<HistoryField> work_rows() {
  constexpr double century = 100 * 366 * seconds_a_day;  // [s]
  return {number("energy", &E::energy, Quantity::energy, 0, 1e15, {K::energy}, "friction energy of the whole stand"),
          number("running_time", &E::running_time, Quantity::running_time, 0, century, {K::energy}, "running time"),
          number("rolls", &E::rolls, Quantity::number, 0, 1e9, {K::energy}, "rolls unwound"),
          {"since",
           &E::since,
           Quantity::number,
           0,
           0,
           false,
           {K::energy},
           "date from which it counts; else from the entry before of this kind, or from the change of pads"}};
}

std::vector<HistoryField> reading_rows() {
  return {number("tension", &E::tension, Quantity::force, 0, 1e6, {K::reading}, "over the whole width"),
          number("pressure", &E::pressure, Quantity::pressure, 0, 1e8, {K::reading}, "gauge, at the brake"),
          above(number("diameter", &E::diameter, Quantity::short_length, 0, 10, {K::reading}, "of the roll")),
          number("speed", &E::speed, Quantity::speed, 0, 200, {K::reading}, "of the web"),
          above(number("temperature", &E::temperature, Quantity::temperature, 0, 3000, {K::reading}, "of the disc")),
          number("pairs", &E::pairs, Quantity::count, 0, 1000, {K::reading}, "engaged on each brake")};
}

std::vector<HistoryField> fit_rows() {
  return {above(number("torque_per_pressure", &E::torque_per_pressure, Quantity::torque_per_pressure, 0, 1, {K::fit},
                       "of one pair")),
          number("threshold", &E::threshold, Quantity::pressure, -1e6, 1e8, {K::fit}, "pressure below which pads idle"),
          number("drag", &E::drag, Quantity::torque, 0, 1e6, {K::fit}, "torque with the pads released"),
          above(number("friction", &E::friction, Quantity::number, 0, 10, {K::fit}, "effective coefficient")),
          words("grade", &E::grade, {K::pads, K::fit}, "friction grade of the pads"),
          words("text", &E::text, {K::reading, K::pads, K::wear, K::energy, K::fit, K::note}, "a remark")};
}

}  // namespace

const std::vector<HistoryField>& history_fields() {
  static const std::vector<HistoryField> all = [] {
    std::vector<HistoryField> rows = pad_rows();
    for (const auto& more : {work_rows(), reading_rows(), fit_rows()})
      rows.insert(rows.end(), more.begin(), more.end());
    return rows;
  }();
  return all;
}

const HistoryField* history_field(std::string_view key) {
  const auto& all = history_fields();
  const auto found =
      std::find_if(all.begin(), all.end(), [key](const HistoryField& field) { return field.key == key; });
  return found == all.end() ? nullptr : &*found;
}

bool takes(EntryKind kind, const HistoryField& field) {
  return std::find(field.of.begin(), field.of.end(), kind) != field.of.end();
}

std::vector<std::string> keys_of(EntryKind kind) {
  std::vector<std::string> keys;
  for (const HistoryField& field : history_fields())
    if (takes(kind, field)) keys.push_back(field.key);
  return keys;
}

namespace {

/// Reads a member, whatever it is.
struct Reader {
  const E& entry;
  HistoryValue operator()(std::optional<double> E::*member) const {
    const auto& value = entry.*member;
    return value ? HistoryValue(*value) : HistoryValue();
  }
  HistoryValue operator()(std::string E::*member) const {
    const auto& value = entry.*member;
    return value.empty() ? HistoryValue() : HistoryValue(value);
  }
  HistoryValue operator()(bool E::*member) const { return entry.*member ? HistoryValue(1.0) : HistoryValue(); }
  HistoryValue operator()(std::optional<int> E::*member) const {
    const auto& value = entry.*member;
    return value ? HistoryValue(static_cast<double>(*value)) : HistoryValue();
  }
};

/// Writes a member when the value suits it.
struct Writer {
  E& entry;
  const HistoryValue& value;
  void operator()(std::optional<double> E::*member) const {
    if (const auto* number = std::get_if<double>(&value)) entry.*member = *number;
  }
  void operator()(std::string E::*member) const {
    if (const auto* text = std::get_if<std::string>(&value)) entry.*member = *text;
  }
  void operator()(bool E::*member) const {
    if (const auto* number = std::get_if<double>(&value)) entry.*member = *number != 0;
  }
  void operator()(std::optional<int> E::*member) const {
    const auto* number = std::get_if<double>(&value);
    if (number != nullptr && *number > -1e6 && *number < 1e6) entry.*member = static_cast<int>(*number);
  }
};

}  // namespace

HistoryValue value_of(const HistoryEntry& entry, const HistoryField& field) {
  return std::visit(Reader{entry}, field.target);
}

void set_value(HistoryEntry& entry, const HistoryField& field, const HistoryValue& value) {
  std::visit(Writer{entry, value}, field.target);
}

std::vector<std::string> needed_by(EntryKind kind) {
  switch (kind) {
    case K::reading:
      return {"tension", "pressure", "diameter", "speed", "temperature", "pairs"};
    case K::wear:
      return {"thickness", "depth"};
    case K::energy:
      return {"energy", "running_time", "rolls"};
    case K::fit:
      return {"torque_per_pressure", "threshold", "drag", "friction"};
    case K::note:
      return {"text"};
    case K::pads:
      break;
  }
  return {};
}

}  // namespace holdback
