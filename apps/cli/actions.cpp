#include "actions.hpp"

#include <algorithm>
#include <cstdio>

#include "completion.hpp"
#include "examples.hpp"
#include "figures.hpp"
#include "holdback/draw/cells.hpp"
#include "holdback/files/csv.hpp"
#include "holdback/files/format_page.hpp"
#include "holdback/files/schema.hpp"
#include "host.hpp"
#include "man_page.hpp"
#include "on_site.hpp"
#include "page.hpp"
#include "xlsx_read.hpp"
#include "xlsx_write.hpp"

namespace holdback::cli {

namespace {

/// The table of jobs, out of a workbook when it is one.
void read_jobs(const Settings& settings, api::Request& request, Problems& problems) {
  if (settings.jobs.empty()) return;
  const std::size_t before = problems.size();
  request.jobs = read_or_note(settings.jobs, problems);
  if (problems.size() > before) return;
  auto table = jobs_table(std::move(*request.jobs), settings.sheet);
  if (auto* problem = std::get_if<Problem>(&table))
    problems.push_back(std::move(*problem));
  else
    request.jobs = std::get<api::Source>(std::move(table));
}

/// "hand,loadcell" as controls, each once.
std::vector<ControlKind> controls_of(const std::string& list) {
  std::vector<ControlKind> kinds;
  std::size_t from = 0;
  while (from < list.size()) {
    const std::size_t comma = std::min(list.find(',', from), list.size());
    const std::string name = list.substr(from, comma - from);
    const auto kind = api::control_called(name);
    if (!kind) throw Refusal("--compare: no control is called \"" + name + "\"; there are " + api::control_words);
    if (std::find(kinds.begin(), kinds.end(), *kind) == kinds.end()) kinds.push_back(*kind);
    from = comma + 1;
  }
  return kinds;
}

Answer answer_of(const Settings& settings, const api::Request& request, Problems problems) {
  if (problems.empty()) return api::answer(request);
  Answer answer;
  answer.command = settings.command;
  answer.outcome = Outcome::bad_input;
  answer.problems = std::move(problems);
  return answer;
}

bool is_table(const Example& example) { return example.file.substr(example.file.rfind('.') + 1) == "csv"; }

bool is_readings(const Example& example) {
  return is_table(example) && example.name.substr(example.name.rfind('-') + 1) == "readings";
}

bool is_log(const Example& example) {
  return is_table(example) && example.name.substr(example.name.rfind('-') + 1) == "log";
}

/// An example that is CSV as a table, numbers as numbers.
report::JobsTable table_of(const Example& example) {
  report::JobsTable table;
  files::CsvReader csv(example.text, ',');
  for (files::Row row; csv.next(row);) {
    std::vector<report::JobsTable::Cell> cells;
    for (const auto& cell : row.cells) {
      const auto number = units::parse(cell.text, Quantity::number);
      const bool is_number = !table.heads.empty() && std::holds_alternative<double>(number);
      cells.push_back(is_number ? report::JobsTable::Cell{"", std::get<double>(number)}
                                : report::JobsTable::Cell{cell.text, {}});
    }
    if (!table.heads.empty()) table.rows.push_back(std::move(cells));
    if (table.heads.empty())
      for (const auto& cell : cells) table.heads.push_back(cell.text);
  }
  return table;
}

/// What an example says of itself: the first sentence of its first comment.
std::string summary_of(const Example& example) {
  if (is_readings(example)) return "readings at a brake, for fit";
  if (is_log(example)) return "a log of a stand in motion, for diagnose";
  if (is_table(example)) return "a table of more jobs, for --jobs";
  auto line = example.text.substr(0, example.text.find('\n'));
  line.remove_prefix(std::min(line.find_first_not_of("# "), line.size()));
  return std::string(line.substr(0, line.find(". ")));
}

std::string examples_list() {
  std::string out;
  for (const auto& example : examples()) out += draw::pad_right(example.name, 22) + "  " + summary_of(example) + "\n";
  return out;
}

std::string described(const Settings& settings) {
  if (settings.topic == "schema") return files::stand_schema();
  if (settings.topic == "answer-schema") return report::answer_schema();
  if (settings.topic == "file-format") return files::file_format_page();
  if (settings.topic == "man") return man_page();
  if (settings.shell.empty()) throw Refusal("describe completion needs SHELL: bash or zsh");
  return settings.shell == "zsh" ? zsh_completion() : bash_completion();
}

}  // namespace

api::Request request_of(const Settings& settings, Problems& problems) {
  api::Request request;
  request.command = settings.command;
  if (is_on_site(settings))
    read_on_site(settings, request, problems);
  else
    request.stand = read_or_note(settings.file, problems);
  read_jobs(settings, request, problems);
  request.job = settings.job;
  request.all = settings.all;
  if (!settings.brake.empty()) request.brake = settings.brake;
  if (!settings.grade.empty()) request.grade = settings.grade;
  request.brakes = settings.brakes;
  request.tolerance = settings.tolerance;
  request.threads = settings.threads.value_or(0);
  request.scenario = settings.scenario;
  request.compare = controls_of(settings.compare);
  if (!settings.idlers.empty()) request.idlers = settings.idlers == "each" ? api::Idlers::each : api::Idlers::following;
  request.progress = progress_bar();
  return request;
}

int answer_stand(const Settings& settings) {
  protect_inputs(settings);
  Problems problems;
  const auto request = request_of(settings, problems);
  const auto answer = answer_of(settings, request, std::move(problems));
  write_fitted_brake(answer, settings);
  // The answer does not hold the stand that its elevation is drawn from.
  const bool drawn = answer.choice && !settings.svg.empty();
  const auto stand = drawn ? api::read_stand_for(request).stand : std::optional<Stand>{};
  return deliver(answer, settings, stand ? &*stand : nullptr);
}

int deliver(const Answer& answer, const Settings& settings, const Stand* stand) {
  const auto styles = styles_of(settings);
  write_figures(answer, settings, styles.out.system, stand);
  write_traces(answer, settings, styles.out.system);
  if (!settings.xlsx.empty() && answer.outcome != Outcome::bad_input)
    write_file(workbook(answer, styles.out.system), settings.xlsx);
  if (settings.json) {
    write(report::json(answer), settings);
  } else {
    std::fputs(report::problems_text(answer.problems, styles.err).c_str(), stderr);
    const auto text = settings.csv ? report::csv(answer, styles.out.system) : report::text(answer, styles.out);
    if (answer.outcome != Outcome::bad_input) write(text, settings);
  }
  return static_cast<int>(answer.outcome);
}

int show_example(const Settings& settings) {
  if (settings.topic.empty()) {
    if (!settings.xlsx.empty()) throw Refusal("--xlsx needs the NAME of an example that is a table");
    write(examples_list(), settings);
    return 0;
  }
  const auto found = std::find_if(examples().begin(), examples().end(),
                                  [&](const Example& example) { return example.name == settings.topic; });
  for (const auto& path : {settings.out, settings.xlsx}) {
    if (!path.empty() && exists(path) && !settings.force)
      throw Refusal(path + " is there already; --force replaces it");
  }
  if (!settings.xlsx.empty()) {
    if (is_log(*found)) throw Refusal(settings.topic + " is a log; only a table becomes a workbook");
    if (!is_table(*found)) throw Refusal(settings.topic + " is a stand file; only a table becomes a workbook");
    if (is_readings(*found)) throw Refusal(settings.topic + " is no table of jobs; only that becomes a workbook");
    write_file(workbook(table_of(*found), settings.topic), settings.xlsx);
    return 0;
  }
  write(std::string(found->text), settings);
  return 0;
}

int write_page(const Settings& settings) {
  if (page().empty())
    throw Refusal("this program was built without the page; ./run page builds it, and the program with it");
  if (!settings.out.empty() && exists(settings.out) && !settings.force)
    throw Refusal(settings.out + " is there already; --force replaces it");
  write(std::string(page()), settings);
  return 0;
}

int describe(const Settings& settings) {
  write(described(settings), settings);
  return 0;
}

}  // namespace holdback::cli
