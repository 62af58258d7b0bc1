#include "actions.hpp"

#include <algorithm>
#include <cstdio>

#include "completion.hpp"
#include "examples.hpp"
#include "holdback/draw/cells.hpp"
#include "holdback/files/format_page.hpp"
#include "holdback/files/schema.hpp"
#include "host.hpp"
#include "man_page.hpp"

namespace holdback::cli {

namespace {

/// Reads what the call names; what cannot be read is added to `problems`.
api::Source read_or_note(const std::string& path, Problems& problems) {
  auto read_file = read(path);
  if (auto* problem = std::get_if<Problem>(&read_file)) {
    problems.push_back(std::move(*problem));
    return {};
  }
  return std::get<api::Source>(std::move(read_file));
}

api::Request request_of(const Settings& settings, Problems& problems) {
  api::Request request;
  request.command = settings.command;
  request.stand = read_or_note(settings.file, problems);
  if (!settings.jobs.empty()) request.jobs = read_or_note(settings.jobs, problems);
  request.job = settings.job;
  request.all = settings.all;
  if (!settings.brake.empty()) request.brake = settings.brake;
  if (!settings.grade.empty()) request.grade = settings.grade;
  request.brakes = settings.brakes;
  request.tolerance = settings.tolerance;
  request.threads = settings.threads.value_or(0);
  return request;
}

Answer answer_of(const Settings& settings) {
  Problems problems;
  const auto request = request_of(settings, problems);
  if (problems.empty()) return api::answer(request);
  Answer answer;
  answer.command = settings.command;
  answer.outcome = Outcome::bad_input;
  answer.problems = std::move(problems);
  return answer;
}

/// What an example says of itself: the first sentence of its first comment.
std::string summary_of(const Example& example) {
  if (example.file.substr(example.file.rfind('.') + 1) == "csv") return "a table of more jobs, for --jobs";
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

int answer_stand(const Settings& settings) {
  protect_inputs(settings);
  const auto styles = styles_of(settings);
  const auto answer = answer_of(settings);
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
    write(examples_list(), settings);
    return 0;
  }
  const auto found = std::find_if(examples().begin(), examples().end(),
                                  [&](const Example& example) { return example.name == settings.topic; });
  if (!settings.out.empty() && exists(settings.out) && !settings.force) {
    throw Refusal(settings.out + " is there already; --force replaces it");
  }
  write(std::string(found->text), settings);
  return 0;
}

int describe(const Settings& settings) {
  write(described(settings), settings);
  return 0;
}

}  // namespace holdback::cli
