// What the numbers stand on: assumptions, defaults that were used, columns that were read, doubts, limits of the model.
#include <fmt/format.h>

#include <algorithm>

#include "holdback/papers/report_parts.hpp"
#include "holdback/report/phrase.hpp"

namespace holdback::papers::selection {

namespace {

/// A sentence with the jobs that it is said of; none: of all.
struct Said {
  std::string text{};
  std::vector<std::string> jobs{};
};

void add(std::vector<Said>& said, const std::vector<Note>& notes, const std::string& job, units::System system) {
  for (const auto& note : notes) {
    auto text = report::filled(note, system);
    const auto same = std::find_if(said.begin(), said.end(), [&](const Said& each) { return each.text == text; });
    auto& entry = same == said.end() ? said.emplace_back(Said{std::move(text), {}}) : *same;
    if (same != said.end() && entry.jobs.empty()) continue;  // said of all already
    if (!job.empty() && std::find(entry.jobs.begin(), entry.jobs.end(), job) == entry.jobs.end())
      entry.jobs.push_back(job);
  }
}

std::string words_of(const Said& said, std::size_t jobs) {
  if (said.jobs.empty()) return said.text;
  if (said.jobs.size() == jobs && jobs > 1) return said.text + " (every job)";
  return said.text + " (" + report::names(said.jobs) + ")";
}

void assumptions(Chapter& chapter, const Dossier& dossier) {
  const auto system = chapter.system();
  std::vector<Said> said;
  if (dossier.size.choice) add(said, dossier.size.choice->assumptions, {}, system);
  if (dossier.plan.plan) add(said, dossier.plan.plan->assumptions, {}, system);
  for (const auto& answer : dossier.simulations)
    if (answer.simulation) add(said, answer.simulation->assumptions, {}, system);
  for (const auto& answer : dossier.tunings)
    if (answer.tuning) add(said, answer.tuning->assumptions, {}, system);
  const auto& jobs = jobs_on_fit(dossier);
  for (const auto& job : jobs) add(said, job.notes, job.job, system);
  std::vector<std::string> items;
  for (const auto& each : said) items.push_back(words_of(each, jobs.size()));
  chapter.heading("Assumptions");
  chapter.items(std::move(items));
}

/// Defaults of fields of one name with one value, told together with whom they are of.
struct Taken {
  std::string field{};
  std::string text{};
  std::vector<std::string> owners{};
};

std::string last_part(const std::string& path) { return path.substr(path.find_last_of('.') + 1); }

/// "web" of "web \"film\"".
std::string kind_of(const std::string& owner) { return owner.substr(0, owner.find(' ')); }

std::vector<Taken> grouped(const std::vector<DefaultUsed>& defaults) {
  std::vector<Taken> out;
  for (const auto& used : defaults) {
    if (used.owner.empty()) {
      out.push_back({used.field, used.text, {}});
      continue;
    }
    const auto same = std::find_if(out.begin(), out.end(), [&](const Taken& each) {
      return each.field == last_part(used.field) && each.text == used.text && !each.owners.empty() &&
             kind_of(each.owners.front()) == kind_of(used.owner);
    });
    auto& taken = same == out.end() ? out.emplace_back(Taken{last_part(used.field), used.text, {}}) : *same;
    taken.owners.push_back(used.owner);
  }
  return out;
}

std::string owners_of(const Taken& taken) {
  constexpr std::size_t most = 4;
  if (taken.owners.size() > most)
    return report::counted(static_cast<int>(taken.owners.size()), kind_of(taken.owners.front()));
  std::string out;
  for (const auto& owner : taken.owners) out += (out.empty() ? "" : ", ") + owner;
  return out;
}

void defaults(Chapter& chapter, const std::vector<DefaultUsed>& used) {
  chapter.heading("Defaults used");
  if (used.empty()) return chapter.say("None: the stand file gives every value.");
  chapter.say("Not in the stand file, so taken from the table of its fields. Read this list once for each new stand.");
  const auto taken = grouped(used);
  Rows<Taken> rows(taken, chapter.system());
  rows.text("field", &Taken::field).text("of", owners_of).text("value taken", &Taken::text);
  chapter.table(rows.under("Defaults"));
}

void columns(Chapter& chapter, const std::vector<ColumnRead>& columns) {
  Rows<ColumnRead> rows(columns, chapter.system());
  rows.text("file", &ColumnRead::file)
      .text("column", &ColumnRead::column)
      .text("its head", &ColumnRead::header)
      .text("read as", [](const ColumnRead& column) { return column.field.empty() ? "not read" : column.field; })
      .text("unit", &ColumnRead::unit);
  chapter.heading("The table of jobs");
  chapter.table(rows.under("What each column was read as"));
}

void doubts(Chapter& chapter, const Problems& problems) {
  const auto system = chapter.system();
  Rows<Problem> rows(problems, system);
  rows.text("", [](const Problem& problem) { return problem.severity == Severity::error ? "error" : "doubt"; })
      .text("field", &Problem::field)
      .text("value", &Problem::value)
      .text("what", [=](const Problem& problem) { return report::filled(problem.what, system); })
      .text("accepted", [=](const Problem& problem) { return report::filled(problem.accepted, system); });
  chapter.heading("Doubts about the input");
  chapter.table(rows.under("Errors and doubts of the stand file, to be looked into"));
}

void model(Chapter& chapter) {
  chapter.heading("Limits of the model");
  chapter.items(
      {"limits and margins are those of steady run and of even ramps and stops; that the web stretches, the roll is "
       "out of round and the air takes time counts in the simulations only",
       "friction is the least certain input: every torque is judged at the end of its band that is worse",
       "one disc is at one temperature but for its face in a stop; cooling without a measured map is good to a fifth "
       "or so",
       "wear goes by friction energy and temperature; dust, oil, moisture and damaged discs are not in it",
       "tension is even over the width; web guiding, wrinkles and splices that fail are not judged",
       "frame, chucks and their bolts are not judged, nor is anything that lifts or clamps the roll"});
}

}  // namespace

void given_and_taken(Chapter& chapter, const Dossier& dossier) {
  assumptions(chapter, dossier);
  defaults(chapter, dossier.size.defaults);
  columns(chapter, dossier.size.columns);
  doubts(chapter, dossier.size.problems);
  model(chapter);
}

}  // namespace holdback::papers::selection
