#include "holdback/files/log_names.hpp"

#include <algorithm>
#include <cctype>
#include <map>
#include <set>

#include "holdback/files/header_parts.hpp"
#include "holdback/files/header_words.hpp"
#include "holdback/units/expression.hpp"
#include "holdback/units/text.hpp"
#include "holdback/units/units.hpp"

namespace holdback::files {
namespace {

using What = LogMeaning::What;

/// Names of one meaning. A unit that the name itself implies ("rpm" is none: it
/// is no channel).
struct Alias {
  What what{What::channel};
  LogChannel channel{};
  std::vector<std::string> names{};
  std::string unit{};
  double more{1};
};

const std::vector<Alias>& aliases() {
  using C = LogChannel;
  static const std::vector<Alias> all{
      {What::channel,
       C::time,
       {"t", "time stamp", "timestamp", "date time", "datetime", "date and time", "elapsed time", "elapsed",
        "time elapsed", "relative time", "time of day", "clock", "run time", "log time", "x value"}},
      {What::channel, C::time, {"seconds", "time seconds", "time s", "time sec"}, "s"},
      {What::channel, C::time, {"milliseconds", "millis", "time ms"}, "ms"},
      {What::date, C::time, {"date", "day"}},
      {What::row_number,
       C::time,
       {"sample", "samples", "sample number", "index", "row", "row number", "record", "record number", "scan",
        "scan number", "point", "count", "number", "n", "reading"}},
      {What::channel,
       C::speed,
       {"web speed", "line speed", "machine speed", "velocity", "web velocity", "line velocity", "v", "v web", "v line",
        "surface speed", "production speed", "web line speed"}},
      {What::channel, C::speed, {"fpm"}, "ft/min"},
      {What::channel, C::speed, {"mpm"}, "m/min"},
      {What::channel,
       C::tension,
       {"web tension", "total tension", "tension total", "force", "web force", "f", "load cell", "loadcell", "load",
        "web pull", "pull", "tension force", "f web", "tension load cell", "roll tension"}},
      {What::channel, C::tension, {"pli"}, "pli"},
      {What::channel,
       C::pressure,
       {"brake pressure", "air pressure", "brake air", "brake air pressure", "air", "p", "p brake", "p air",
        "pressure brake line", "regulator pressure", "gauge pressure", "pneumatic pressure", "cylinder pressure"}},
      {What::channel, C::pressure, {"psi"}, "psi"},
      {What::channel,
       C::diameter,
       {"roll diameter", "reel diameter", "d", "roll outer diameter", "outer diameter", "diameter calculated",
        "calculated diameter", "d roll", "coil diameter"}},
      {What::channel, C::diameter, {"radius", "roll radius", "r", "reel radius"}, "", 2},
      {What::channel,
       C::turns,
       {"turn", "revolutions", "revolution", "revs", "rev", "roll turns", "roll revolutions", "roll revs", "rev count",
        "turn count", "revolution count", "encoder", "roll encoder", "rotations", "roll angle", "angle", "wraps"},
       "rev"},
      {What::channel,
       C::temperature,
       {"temp", "disc temperature", "disk temperature", "brake temperature", "disc temp", "disk temp", "brake temp",
        "t disc", "t disk", "t brake", "rotor temperature", "rotor temp", "pad temperature", "pad temp"}},
      {What::channel,
       C::pairs,
       {"pad pairs", "pairs engaged", "engaged pairs", "engaged pad pairs", "pads engaged", "calipers", "n pairs",
        "active pairs", "actuators", "engaged actuators", "pairs on"}},
  };
  return all;
}

/// Words that say which signal it is and nothing of what it measures. Words
/// such as "set" and "target" are not among them: what is asked for is not what
/// was measured.
bool is_filler(const std::string& word) {
  static const std::set<std::string> words{
      "actual", "act",      "pv",   "measured", "meas", "value",   "val",     "unwind",  "unwinder", "signal",
      "sensor", "feedback", "fb",   "current",  "raw",  "channel", "ch",      "ai",      "analog",   "analogue",
      "input",  "live",     "real", "process",  "plc",  "main",    "reading", "smoothed"};
  if (words.count(word) != 0) return true;
  const std::size_t letters = word.find_first_of("0123456789");
  if (letters == std::string::npos) return false;
  const bool digits_follow = word.find_first_not_of("0123456789", letters) == std::string::npos;
  const std::string prefix = word.substr(0, letters);
  return digits_follow && (prefix.empty() || prefix == "ch" || prefix == "ai" || prefix == "plc");
}

/// header_words() without the fillers.
std::string without_fillers(const std::string& words) {
  std::string kept;
  for (std::size_t at = 0; at < words.size();) {
    const std::size_t end = std::min(words.find(' ', at), words.size());
    const std::string word = words.substr(at, end - at);
    if (!is_filler(word)) kept += (kept.empty() ? "" : " ") + word;
    at = end + 1;
  }
  return kept;
}

/// "WebSpeed" → "Web Speed".
std::string with_words_parted(const std::string& name) {
  std::string parted;
  for (const char c : name) {
    const bool begins = std::isupper(static_cast<unsigned char>(c)) != 0 && !parted.empty() &&
                        std::islower(static_cast<unsigned char>(parted.back())) != 0;
    if (begins) parted += ' ';
    parted += c;
  }
  return parted;
}

struct Named {
  const Alias* alias{};
  int rank{};
};

std::optional<Named> named(const std::string& name) {
  static const std::map<std::string, const Alias*> known = [] {
    std::map<std::string, const Alias*> names;
    for (const Alias& alias : aliases())
      for (const std::string& each : alias.names) names.emplace(header_words(each), &alias);
    return names;
  }();
  static const std::vector<Alias> own = [] {
    std::vector<Alias> all;
    for (std::size_t i = 0; i < log_channels; ++i) {
      const auto channel = static_cast<LogChannel>(i);
      all.push_back({What::channel, channel, {}, channel == LogChannel::turns ? "rev" : ""});
    }
    return all;
  }();
  const auto look_up = [&](const std::string& words, int rank) -> std::optional<Named> {
    const auto word = std::find(channel_words().begin(), channel_words().end(), words);
    if (word != channel_words().end())
      return Named{&own[static_cast<std::size_t>(word - channel_words().begin())], rank == 2 ? 2 : 0};
    const auto found = known.find(words);
    return found == known.end() ? std::nullopt : std::optional<Named>(Named{found->second, rank});
  };
  const std::string words = header_words(name);
  if (auto found = look_up(words, 1)) return found;
  const std::string parted = header_words(with_words_parted(name));
  if (auto found = look_up(parted, 1)) return found;
  for (const std::string& each : {without_fillers(words), without_fillers(parted)})
    if (auto found = each.empty() ? std::nullopt : look_up(each, 2)) return found;
  return std::nullopt;
}

std::string small_letters(std::string text) {
  for (char& c : text) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return text;
}

/// "hh:mm:ss.fff", "yyyy-mm-dd": how a stamp is written, not a unit.
bool is_time_pattern(const std::string& unit) {
  const std::string small = small_letters(unit);
  return small.find("hh") != std::string::npos || small.find("mm:") != std::string::npos ||
         small.find("yy") != std::string::npos || small == "iso 8601" || small == "iso8601";
}

/// "-", "1" and "none" say that there is no unit.
bool says_no_unit(const std::string& unit) {
  const std::string small = small_letters(unit);
  return small.empty() || small == "-" || small == "–" || small == "1" || small == "none" || small == "n/a" ||
         small == "#" || small == "pcs";
}

/// A unit that stands loose behind the name: "Speed, m/min", "p / bar", "F_N".
std::vector<NamedUnit> loose_units(const std::string& cell) {
  std::vector<NamedUnit> parts;
  const auto add = [&](std::size_t at, std::size_t width) {
    NamedUnit part{std::string(units::trimmed(std::string_view(cell).substr(0, at))),
                   std::string(units::trimmed(std::string_view(cell).substr(at + width)))};
    if (!part.name.empty() && part.unit.size() <= longest_unit && looks_like_unit(part.unit)) parts.push_back(part);
  };
  if (const std::size_t slash = cell.find(" / "); slash != std::string::npos) add(slash, 3);
  if (const std::size_t slash = cell.find('/'); slash != std::string::npos) add(slash, 1);
  for (const NamedUnit& part : with_loose_unit(cell)) parts.push_back(part);
  for (std::size_t at = cell.find('_'); at != std::string::npos; at = cell.find('_', at + 1)) add(at, 1);
  for (std::size_t at = cell.find('.'); at != std::string::npos; at = cell.find('.', at + 1)) add(at, 1);
  return parts;
}

/// "T" is a time, a tension or a temperature: its unit tells.
LogMeaning of_letter_t(const LogMeaning& time, const std::string& unit) {
  for (const LogChannel channel : {LogChannel::tension, LogChannel::temperature}) {
    LogMeaning other = time;
    other.channel = channel;
    if (const auto usable = unit_for(channel, unit, other.per_width)) {
      other.unit = *usable;
      other.unit_fits = true;
      return other;
    }
  }
  return time;
}

LogMeaning meaning_from(const Named& found, const std::string& unit) {
  LogMeaning meaning;
  meaning.what = found.alias->what;
  meaning.channel = found.alias->channel;
  meaning.rank = found.rank;
  meaning.key = found.rank == 0;
  meaning.more = found.alias->more;
  meaning.unit = found.alias->unit;
  const bool of_time = meaning.channel == LogChannel::time && is_time_pattern(unit);
  if (says_no_unit(unit) || of_time || meaning.what != What::channel) return meaning;
  const auto usable = unit_for(meaning.channel, unit, meaning.per_width);
  meaning.unit_fits = usable.has_value();
  meaning.unit = usable.value_or(unit);
  const bool letter = !meaning.unit_fits && meaning.channel == LogChannel::time && found.rank == 1;
  return letter ? of_letter_t(meaning, unit) : meaning;
}

}  // namespace

const std::string& word_of(LogChannel channel) { return channel_words()[static_cast<std::size_t>(channel)]; }

const std::vector<std::string>& channel_words() {
  static const std::vector<std::string> words{"time",     "speed", "tension",     "pressure",
                                              "diameter", "turns", "temperature", "pairs"};
  return words;
}

Quantity kind_of_cells(LogChannel channel, bool per_width) {
  return per_width ? Quantity::tension_per_width : kind_of(channel);
}

std::optional<std::string> unit_for(LogChannel channel, const std::string& unit, bool& per_width) {
  std::vector<std::string> ways{unit, small_letters(unit)};
  std::string slashed = ways[1];
  std::replace(slashed.begin(), slashed.end(), '_', '/');
  ways.push_back(slashed);
  if (!unit.empty() && unit.back() == '.') ways.push_back(ways[1].substr(0, unit.size() - 1));
  if (channel == LogChannel::temperature && (unit == "C" || unit == "c")) ways.push_back("degC");
  if (channel == LogChannel::temperature && (unit == "F" || unit == "f")) ways.push_back("degF");
  const auto fits = [](const std::string& text, Quantity kind) {
    return std::holds_alternative<units::UnitValue>(units::parse_unit(text, kind));
  };
  for (const std::string& way : ways) {
    if (fits(way, kind_of(channel))) return way;
    if (channel == LogChannel::tension && fits(way, Quantity::tension_per_width)) {
      per_width = true;
      return way;
    }
  }
  return std::nullopt;
}

bool is_log_unit(const std::string& cell) {
  const std::string text = looked_at(cell);
  const std::string unit = opening_bracket(text) == 0 ? in_brackets(text).unit : text;
  if (unit.size() > longest_unit) return false;
  if (is_time_pattern(unit)) return unit.find_first_of("0123456789") == std::string::npos;
  if (!looks_like_unit(unit)) return false;
  for (std::size_t i = 0; i < log_channels; ++i) {
    bool per_width = false;
    if (unit_for(static_cast<LogChannel>(i), unit, per_width)) return true;
  }
  return std::holds_alternative<units::Expression>(units::read_expression(unit));
}

std::optional<LogMeaning> log_meaning_of(const std::string& cell, const std::string& unit_below) {
  const std::string text = looked_at(cell);
  if (text.empty()) return std::nullopt;
  const NamedUnit main = in_brackets(text);
  const auto unit = [&](const std::string& written) { return written.empty() ? unit_below : written; };
  for (const NamedUnit& part :
       {main, NamedUnit{without_remarks(main.name), main.unit}, NamedUnit{without_remarks(text), ""}})
    if (const auto found = named(part.name)) return meaning_from(*found, unit(part.unit));
  for (const NamedUnit& part : loose_units(text)) {
    const auto found = named(part.name);
    if (!found || found->alias->what != What::channel) continue;
    LogMeaning meaning = meaning_from(*found, part.unit);
    if (meaning.unit_fits) return meaning;
  }
  return std::nullopt;
}

}  // namespace holdback::files
