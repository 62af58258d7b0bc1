#include "holdback/field/measure_warnings.hpp"

#include <algorithm>
#include <cmath>

#include "holdback/physics/tension.hpp"

namespace holdback::field {

namespace {

constexpr double much_added = 0.2;  // of the tension while pushed

void warn_read_once(const MeasureInput& input, const MeasureLines& lines, Problems& problems) {
  std::string once;
  for (const ReadingKey& key : input.method->keys) {
    if (key.due != Due::always || !key.by_digits || !lines.has(std::string(key.key))) continue;
    const MeasureLine& line = lines.all()[*lines.place(std::string(key.key))];
    if (line.readings != 1 || (key.key == "frequency" && input.sound)) continue;
    once += (once.empty() ? "" : ", ") + line.key;
  }
  if (!once.empty())
    problems.push_back(reading_problem(
        Severity::warning, once,
        {"one reading only: nothing tells how well it repeats, so only its resolution counts; read it three times or "
         "more",
         {}}));
}

void warn_read_twice(const MeasureLines& lines, Problems& problems) {
  for (const MeasureLine& line : lines.all())
    if (line.all.size() == 2)
      problems.push_back(
          reading_problem(Severity::warning, line.key,
                          {"two readings of " + line.name +
                               " tell their spread so poorly that it counts many times over; read it three "
                               "times or more",
                           {}}));
}

void warn_coarse(const MeasureLines& lines, Problems& problems) {
  for (const MeasureLine& line : lines.all())
    if (line.resolution > 0 && line.resolution >= 0.5 * std::abs(line.input.value) && line.input.value != 0)
      problems.push_back(reading_problem(Severity::warning, line.key,
                                         {line.name + " is {0} and was read to {1}: too coarse to tell much",
                                          {{line.input.value, line.kind}, {line.resolution, line.kind}}}));
}

const MeasuredPart* part_of(const Measurement& found, const std::string& key) {
  const auto part =
      std::find_if(found.parts.begin(), found.parts.end(), [&](const MeasuredPart& one) { return one.key == key; });
  return part == found.parts.end() ? nullptr : &*part;
}

/// The tension at which the job's web yields [N], where the push reached it.
std::optional<double> yield_reached(const MeasureInput& input, const Measurement& found) {
  const MeasuredPart* pushed = part_of(found, "pushed_tension");
  const auto yield = input.web ? physics::web_yield(*input.web) : std::nullopt;
  if (pushed == nullptr || !yield || pushed->value.value < *yield * input.web->width) return std::nullopt;
  return *yield * input.web->width;
}

void warn_yield(const MeasureInput& input, const Measurement& found, Problems& problems) {
  if (const auto yield = yield_reached(input, found))
    problems.push_back(reading_problem(Severity::warning, "push",
                                       {"the push strained the web to {0}, past its yield at {1}",
                                        {part_of(found, "pushed_tension")->value, {*yield, Quantity::force}}}));
}

void warn_modulus(const MeasureLines& lines, Problems& problems) {
  if (!lines.has("stretch")) return;
  const double half = lines.value("stretch");
  problems.push_back(
      reading_problem(Severity::warning, "modulus",
                      {"modulus, caliper and width of the web are not all known, nor then what the push adds: anything "
                       "from nothing to {0}; half of it is taken off",
                       {{2 * half, Quantity::force}}}));
}

/// What holds the web decides what the push adds; where that is much, it must be known.
void warn_held(const MeasureLines& lines, const Measurement& found, Problems& problems) {
  const MeasuredPart* pushed = part_of(found, "pushed_tension");
  const MeasuredPart* added = part_of(found, "added_tension");
  if (lines.has("held") || pushed == nullptr || added == nullptr) return;
  if (added->value.value <= much_added * pushed->value.value) return;
  problems.push_back(reading_problem(
      Severity::warning, "held",
      {"of the {0} while pushed, {1} are taken off as what the push adds, with the web held at both ends of the span; "
       "where idlers turn freely give held, the web between the places that hold it; a dancer or a slipping brake lets "
       "the web give, and then the push adds less, or nothing",
       {pushed->value, added->value}}));
}

/// Their scatter counts only where each push has its own force.
void warn_unequal(const MeasureLines& lines, Problems& problems) {
  if (!lines.has("push") || !lines.has("force")) return;
  const int pushes = lines.line("push").readings;
  const int forces = lines.line("force").readings;
  if (pushes < 2 || forces < 2 || pushes == forces) return;
  problems.push_back(reading_problem(
      Severity::warning, "push, force",
      {"push was read {0} times and force {1} times: which belong together is not known, and the scatter of both "
       "counts "
       "as if they did not; read both each time",
       {{static_cast<double>(pushes), Quantity::count}, {static_cast<double>(forces), Quantity::count}}}));
}

void warn_breakaway(const MeasureLines& lines, Problems& problems) {
  if (!lines.has("breakaway") || !lines.has("pull") || lines.value("breakaway") >= lines.value("pull")) return;
  problems.push_back(reading_problem(
      Severity::warning, "breakaway",
      {"it took {0} to begin turning, less than the {1} to keep turning: were the two taken for each other, or did the "
       "pull grow while the roll turned?",
       {{lines.value("breakaway"), Quantity::force}, {lines.value("pull"), Quantity::force}}}));
}

void warn_cell(const MeasureInput& input, const MeasureLines& lines, Problems& problems) {
  if (input.method->key != "cell" || lines.has("tare") || lines.has("roller_mass")) return;
  problems.push_back(reading_problem(Severity::warning, "tare",
                                     {"no tare: the whole reading counts as the web's; read it without a web, or give "
                                      "roller_mass and tilt",
                                      {}}));
}

}  // namespace

void warn_of_readings(const MeasureInput& input, const MeasureLines& lines, const Measurement& found,
                      Problems& problems) {
  warn_read_once(input, lines, problems);
  warn_read_twice(lines, problems);
  warn_coarse(lines, problems);
  warn_modulus(lines, problems);
  warn_held(lines, found, problems);
  warn_unequal(lines, problems);
  warn_yield(input, found, problems);
  warn_breakaway(lines, problems);
  warn_cell(input, lines, problems);
}

std::optional<Note> yield_caution(const MeasureInput& input, const Measurement& found) {
  if (!yield_reached(input, found)) return std::nullopt;
  return Note{"The push stretched the web for good: cut that piece out, and push less far the next time.", {}};
}

}  // namespace holdback::field
