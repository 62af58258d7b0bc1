#include "holdback/files/cross_check.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <tuple>
#include <utility>

#include "holdback/files/field_table.hpp"

namespace holdback::files {
namespace {

bool names_unknown(const Note& note) {
  return std::any_of(note.amounts.begin(), note.amounts.end(), [](const Amount& a) { return !std::isfinite(a.value); });
}

/// "brake[1].grade[0].friction" → "brake[1].grade[0]" → "brake[1]" → "", the stand file as a whole.
std::string parent_of(const std::string& path) {
  const std::size_t dot = path.rfind('.');
  return dot == std::string::npos ? std::string() : path.substr(0, dot);
}

/// True for a path that begins with a table of a stand file; options of a command ("--job") have no place in it.
bool is_in_file(const std::string& path) {
  const std::string table = path.substr(0, path.find_first_of("[."));
  return std::any_of(sections().begin(), sections().end(),
                     [&](const Section& section) { return section.key == table; });
}

const FieldPlace* nearest_place(std::string path, const StandFile& file) {
  if (!is_in_file(path)) return nullptr;
  while (!path.empty() && file.places.count(path) == 0) path = parent_of(path);
  const auto found = file.places.find(path);
  return found == file.places.end() ? nullptr : &found->second;
}

std::string default_of(const std::string& path, const StandFile& file) {
  for (const DefaultUsed& used : file.defaults)
    if (used.field == path) return used.text + " (default)";
  return {};
}

/// A job that was read from a table is called by its row: "job[12].speed" → "jobs.csv row 7, speed". The place of such
/// a job holds the row as its value.
void name_row(Problem& problem, const StandFile& file) {
  const std::size_t end = problem.field.find(']');
  if (problem.field.compare(0, 4, "job[") != 0 || end == std::string::npos) return;
  const auto job = file.places.find(problem.field.substr(0, end + 1));
  if (job == file.places.end() || job->second.value.empty()) return;
  const std::string rest = problem.field.substr(end + 1);
  problem.field = job->second.file + " " + job->second.value + (rest.empty() ? "" : ", " + rest.substr(1));
}

void locate_one(Problem& problem, const StandFile& file) {
  if (problem.field.empty() || problem.where.line != 0) return;
  const FieldPlace* place = nearest_place(problem.field, file);
  const bool own = file.places.count(problem.field) != 0;
  if (place != nullptr) {
    problem.file = place->file;
    problem.where = place->where;
  }
  if (problem.value.empty()) problem.value = own ? place->value : default_of(problem.field, file);
  name_row(problem, file);
}

void add_source_line(Problem& problem, const StandFile& file) {
  const auto lines = file.lines.find(problem.file);
  const auto index = static_cast<std::size_t>(std::max(problem.where.line, 1)) - 1;
  if (problem.where.line < 1 || lines == file.lines.end() || index >= lines->second.size()) return;
  problem.source_line = lines->second[index];
}

/// "brake[0].grade[1].friction" when the brake's pad, which decides what it needs, could not be read.
bool follows_from_pad(const std::string& field, const std::set<std::string>& reported) {
  const std::size_t end = field.find(']');
  return end != std::string::npos && reported.count(field.substr(0, end + 1) + ".pad") != 0;
}

/// "scenario[0].event[2].duration" when what an event of this scenario does could not be read: the others are judged by
/// their neighbours.
bool follows_from_event(const std::string& field, const std::set<std::string>& reported) {
  const std::size_t end = field.find(".event[");
  if (field.compare(0, 9, "scenario[") != 0 || end == std::string::npos) return false;
  const std::string events = field.substr(0, end + 7);
  return std::any_of(reported.begin(), reported.end(), [&](const std::string& path) {
    return path.compare(0, events.size(), events) == 0 && path.compare(path.size() - 3, 3, ".do") == 0;
  });
}

/// "control.kind" when the table of the sensor that it wants may be there under a misspelt header.
bool follows_from_sensor(const std::string& field, const std::set<std::string>& meant) {
  if (field != section::control + ".kind") return false;
  return meant.count(section::load_cell) + meant.count(section::dancer) + meant.count(section::diameter_sensor) != 0;
}

}  // namespace

void locate(Problems& problems, const StandFile& file) {
  for (Problem& problem : problems) {
    locate_one(problem, file);
    add_source_line(problem, file);
  }
}

void add_located(Problems found, StandFile& file) {
  std::set<std::string> reported = file.meant;
  for (const Problem& problem : file.problems) reported.insert(problem.field);
  for (Problem& problem : found) {
    locate_one(problem, file);
    if (names_unknown(problem.what) || reported.count(problem.field) != 0) continue;
    if (follows_from_pad(problem.field, reported) || follows_from_event(problem.field, reported)) continue;
    if (follows_from_sensor(problem.field, file.meant)) continue;
    file.problems.push_back(std::move(problem));
  }
}

void add_cross_problems(StandFile& file) { add_located(problems_of(file.stand), file); }

void remove_cross_problems(StandFile& file) {
  Problems found = problems_of(file.stand);
  locate(found, file);
  std::set<std::pair<std::string, std::string>> told;
  for (const Problem& problem : found) told.emplace(problem.field, problem.what.text);
  const auto is_cross = [&](const Problem& problem) { return told.count({problem.field, problem.what.text}) != 0; };
  file.problems.erase(std::remove_if(file.problems.begin(), file.problems.end(), is_cross), file.problems.end());
}

void finish(StandFile& file, const std::string& last_file) {
  locate(file.problems, file);
  const auto order = [&](const Problem& problem) {
    return std::tuple(!last_file.empty() && problem.file == last_file, problem.where.line, problem.where.column);
  };
  std::stable_sort(file.problems.begin(), file.problems.end(),
                   [&](const Problem& a, const Problem& b) { return order(a) < order(b); });
}

void add_problems(const Problems& found, const std::string& jobs_file, StandFile& file) {
  file.problems.insert(file.problems.end(), found.begin(), found.end());
  finish(file, jobs_file);
}

}  // namespace holdback::files
