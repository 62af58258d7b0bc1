#include "holdback/field/measure_inputs.hpp"

#include <algorithm>
#include <cmath>

#include "holdback/physics/tension.hpp"

namespace holdback::field {

namespace {

using numerics::Doubt;

const KeyReadings* readings_of(const MeasureInput& input, std::string_view key) {
  const auto& all = input.readings;
  const auto found = std::find_if(all.begin(), all.end(), [key](const KeyReadings& one) { return one.key == key; });
  return found == all.end() ? nullptr : &*found;
}

std::string name_of(const ReadingKey& key) {
  std::string name(key.key);
  std::replace(name.begin(), name.end(), '_', ' ');
  return name;
}

// Modulus, weight and the like come with a share of their value, not with the digits of an instrument.
bool is_data(const ReadingKey& key) { return key.share > 0 && key.step == 0; }

double share_of(const MeasureInput& input, const ReadingKey& key) {
  return key.key == "caliper" && input.caliper_share > 0 ? input.caliper_share : key.share;
}

MeasureLine line_of(const ReadingKey& key) {
  MeasureLine line;
  line.key = key.key;
  line.name = name_of(key);
  line.kind = key.kind;
  return line;
}

Note origin_of(const ReadingKey& key, const KeyReadings& read, bool shared, double share) {
  Note note;
  if (shared) {
    note.text = "as given, known to ±{0} as is usual";
    note.amounts = {{share, Quantity::ratio}};
    return note;
  }
  const auto times = read.values.size();
  note.text = times == 1 ? "read once" : "read " + std::to_string(times) + " times";
  if (read.limit > 0) {
    note.text += ", ±{0} as stated";
    note.amounts = {{read.limit, key.kind}};
  }
  if (read.resolution > 0) {
    note.text += ", to {" + std::to_string(note.amounts.size()) + "}";
    note.amounts.push_back({read.resolution, key.kind});
    if (read.from == ResolutionFrom::stated) note.text += " as stated";
    if (read.from == ResolutionFrom::digits) note.text += " by the digits written";
    if (read.from == ResolutionFrom::instrument) note.text += " as its usual instrument shows";
  }
  return note;
}

/// A value that is known to a share of itself.
void doubt_share(MeasureLine& line, double share) {
  if (share > 0) line.input.doubts.push_back(numerics::limit_doubt(share * std::abs(line.input.value)));
}

MeasureLine line_read(const MeasureInput& input, const ReadingKey& key, const KeyReadings& read, bool foretelling) {
  MeasureLine line = line_of(key);
  line.input.value = numerics::mean_of(read.values);
  line.readings = static_cast<int>(read.values.size());
  line.all = read.values;
  const double share = share_of(input, key);
  const bool exact = key.whole || (key.yes_or_no && line.input.value == 0);
  const bool shared = is_data(key) && !exact && read.limit == 0 && read.from != ResolutionFrom::stated;
  if (shared || (foretelling && !is_data(key))) doubt_share(line, share);
  if (!exact && !shared && read.resolution > 0) {
    line.rounding = line.input.doubts.size();
    line.input.doubts.push_back(numerics::resolution_doubt(read.resolution));
    line.resolution = read.resolution;
  }
  if (read.limit > 0) line.input.doubts.push_back(numerics::limit_doubt(read.limit));
  if (read.values.size() > 1) line.input.doubts.push_back(numerics::repeat_doubt(read.values));
  line.origin = exact ? Note{"as given", {}} : origin_of(key, read, shared, share);
  return line;
}

MeasureLine line_from_web(const MeasureInput& input, const ReadingKey& key, double value) {
  MeasureLine line = line_of(key);
  line.input.value = value;
  const double share = share_of(input, key);
  if (share > 0) {
    doubt_share(line, share);
    line.origin = {"of the job's web, known to ±{0} as is usual", {{share, Quantity::ratio}}};
  } else {
    line.input.doubts.push_back(numerics::resolution_doubt(key.step));
    line.origin = {"of the job's web, to {0}", {{key.step, key.kind}}};
  }
  return line;
}

MeasureLine line_otherwise(const MeasureInput& input, const ReadingKey& key) {
  MeasureLine line = line_of(key);
  const bool site = key.key == "air_density" && input.air_density;
  line.input.value = site ? *input.air_density : *key.otherwise;
  if (!key.whole) doubt_share(line, key.share);
  line.origin.text = site ? "of the stand's site" : "taken";
  if (key.share > 0 && !key.whole) {
    line.origin.text += ", ±{0} as is usual";
    line.origin.amounts = {{key.share, Quantity::ratio}};
  }
  return line;
}

MeasureLine line_from_sound(const ReadingKey& key, const PluckSound& sound) {
  MeasureLine line = line_of(key);
  line.input.value = sound.frequency;
  line.input.doubts.push_back({numerics::Shape::normal, sound.uncertainty});
  line.readings = 1;
  line.origin = {"of the recording", {}};
  return line;
}

MeasureLine partial_from_sound(const ReadingKey& key, const PluckSound& sound) {
  MeasureLine line = line_of(key);
  line.input.value = sound.partial;
  line.origin = {"of the recording", {}};
  return line;
}

void check_values(const ReadingKey& key, const KeyReadings& read, Problems& problems) {
  if (key.any_sign || key.yes_or_no) return;
  for (const double value : read.values) {
    const bool force = key.kind == Quantity::force;
    if (value > 0 || (force && value == 0 && key.due == Due::optional)) continue;
    const std::string what = value < 0 ? " is negative; write what the scale shows without a sign"
                                       : " is zero; nothing can be found from it";
    problems.push_back(reading_problem(Severity::error, read.key, {name_of(key) + what, {}}, read.text));
    return;
  }
}

void missing(const MeasureInput& input, const ReadingKey& key, Problems& problems) {
  const std::string by_web =
      key.due == Due::web ? input.web ? "; the job's web does not tell it" : "; name a stand and a job, or give it"
                          : "";
  problems.push_back(reading_problem(Severity::error, std::string(key.key),
                                     {name_of(key) + " is missing: " + std::string(key.help) + by_web, {}}));
}

}  // namespace

Problem reading_problem(Severity severity, const std::string& key, Note what, const std::string& text) {
  Problem problem;
  problem.severity = severity;
  problem.field = key;
  problem.what = std::move(what);
  problem.value = text;
  return problem;
}

std::optional<double> web_value(const Web& web, std::string_view key) {
  if (key == "width") return web.width;
  if (key == "caliper") return web.caliper;
  if (key == "basis_weight" && web.basis_weight > 0) return web.basis_weight;
  if (key == "modulus") {
    if (const auto stiffness = physics::web_stiffness(web)) return *stiffness / web.caliper;
  }
  return std::nullopt;
}

std::optional<std::size_t> MeasureLines::place(const std::string& key) const {
  for (std::size_t i = 0; i < lines_.size(); ++i)
    if (lines_[i].key == key) return i;
  return std::nullopt;
}

std::vector<numerics::UnsureInput> MeasureLines::inputs() const {
  std::vector<numerics::UnsureInput> inputs;
  for (const MeasureLine& line : lines_) inputs.push_back(line.input);
  return inputs;
}

MeasureLines gather(const MeasureInput& input, bool foretelling, Problems& problems) {
  MeasureLines lines;
  for (const ReadingKey& key : input.method->keys) {
    const KeyReadings* read = readings_of(input, key.key);
    const auto web = input.web ? web_value(*input.web, key.key) : std::nullopt;
    if (read != nullptr && !read->values.empty()) {
      check_values(key, *read, problems);
      lines.add(line_read(input, key, *read, foretelling));
    } else if (key.key == "frequency" && input.sound) {
      lines.add(line_from_sound(key, *input.sound));
    } else if (key.key == "partial" && input.sound) {
      lines.add(partial_from_sound(key, *input.sound));
    } else if (web) {
      lines.add(line_from_web(input, key, *web));
    } else if (key.otherwise) {
      lines.add(line_otherwise(input, key));
    } else if (key.due != Due::optional) {
      missing(input, key, problems);
    }
  }
  return lines;
}

}  // namespace holdback::field
