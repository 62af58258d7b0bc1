// What changed from one revision of a stand file to the next, and what that does.
#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "holdback/papers/papers.hpp"
#include "holdback/papers/report_parts.hpp"
#include "holdback/papers/side_by_side.hpp"
#include "holdback/report/phrase.hpp"

namespace holdback::papers {

namespace {

using selection::Chapter;
using sides::Both;

Cell plain(std::string text) { return {std::move(text), Tone::normal, false, State::holds}; }

/// A whole thing came or went.
bool of_thing(const Change& change) { return change.before.empty() && change.after.empty(); }

std::vector<std::string> parts_of(const std::string& path) {
  std::vector<std::string> out(1);
  for (const char c : path) {
    if (c == '.')
      out.emplace_back();
    else
      out.back() += c == '_' ? ' ' : c;
  }
  return out;
}

std::string thing_of(const Change& change) {
  return change.owner.empty() ? parts_of(change.field).front() : change.owner;
}

/// The field as a person reads it, without the tables that its thing stands for: "stop time", "web caliper".
std::string field_of(const Change& change) {
  if (of_thing(change)) return {};
  const auto parts = parts_of(change.field);
  // A job of a table may bring values of its own web: "job.web.caliper" of a job.
  std::size_t from = change.owner.rfind("job ", 0) == 0 || change.owner.empty() ? 1 : parts.size() - 1;
  from = std::min(from, parts.size() - 1);
  std::string out = parts[from];
  for (std::size_t i = from + 1; i < parts.size(); ++i) out += " " + parts[i];
  return out;
}

/// The name in "job \"Paper labels\""; empty when the owner is of another kind.
std::string name_in(const std::string& owner, const std::string& kind) {
  const auto start = kind + " \"";
  if (owner.rfind(start, 0) != 0 || owner.back() != '"') return {};
  return owner.substr(start.size(), owner.size() - start.size() - 1);
}

/// The thing of that name; null: none.
template <class Thing>
const Thing* called(const std::vector<Thing>& things, const std::string& name) {
  const auto found = std::find_if(things.begin(), things.end(), [&](const Thing& each) { return each.name == name; });
  return found == things.end() ? nullptr : &*found;
}

/// Whether the job runs the stand's web of that name, at its own width; a row of a table of jobs may bring another one.
bool runs_web(const Job& job, const Stand& stand, const std::string& name) {
  const Web* web = job.web.name == name ? called(stand.webs, name) : nullptr;
  if (web == nullptr) return false;
  Web same_width = *web;
  same_width.width = job.web.width;
  return same_width == job.web;
}

bool runs_roll(const Job& job, const Stand& stand, const std::string& name) {
  const Roll* roll = job.roll.name == name ? called(stand.rolls, name) : nullptr;
  return roll != nullptr && *roll == job.roll;
}

/// Names of the jobs, of both revisions, for which `reads` holds.
template <class Reads>
std::string jobs_that(const Dossier& before, const Dossier& after, Reads reads) {
  std::vector<std::string> out;
  for (const Dossier* each : {&before, &after})
    for (const Job& job : each->stand.jobs)
      if (reads(job, each->stand) && std::find(out.begin(), out.end(), job.name) == out.end()) out.push_back(job.name);
  return out.empty() ? "no job" : report::names(out);
}

/// Which jobs read what was changed, where that is certain; empty where it is not.
std::string read_by(const Change& change, const Dossier& before, const Dossier& after) {
  if (change.field == "job.share") return {};  // it weighs the job in the mix
  if (const auto job = name_in(change.owner, "job"); !job.empty()) return report::names({job});
  if (const auto web = name_in(change.owner, "web"); !web.empty())
    return jobs_that(before, after, [&](const Job& job, const Stand& stand) { return runs_web(job, stand, web); });
  if (const auto roll = name_in(change.owner, "roll"); !roll.empty())
    return jobs_that(before, after, [&](const Job& job, const Stand& stand) { return runs_roll(job, stand, roll); });
  if (change.field == "stand.title" || change.field == "stand.currency") return "no job";
  return {};
}

std::string marked(const Change& change, const std::string& text, const char* whole) {
  return !text.empty() ? text : of_thing(change) ? whole : "not given";
}

Table change_table(const Dossier& before, const Dossier& after, const Changes& changes) {
  Table table;
  table.columns = {
      {"of", "", false}, {"what", "", false}, {"before", "", false}, {"after", "", false}, {"read by", "", false}};
  std::string last;
  for (const Change& change : changes.changes) {
    const auto thing = thing_of(change);
    const bool came = change.kind == ChangeKind::added;
    table.rows.push_back({{thing == last ? "" : thing, Tone::strong, false, State::holds},
                          plain(field_of(change)),
                          plain(marked(change, change.before, came ? "–" : "there")),
                          plain(marked(change, change.after, came ? "added" : "removed")),
                          plain(read_by(change, before, after))});
    last = thing;
  }
  return table;
}

std::string count_of(const Changes& changes) {
  int fields = 0;
  int came = 0;
  int went = 0;
  for (const Change& change : changes.changes)
    ++(!of_thing(change) ? fields : change.kind == ChangeKind::added ? came : went);
  return fmt::format("{}, {} added, {} removed", report::counted(fields, "field"), report::counted(came, "thing"),
                     report::counted(went, "thing"));
}

void what_changed(Chapter& chapter, const Dossier& before, const Dossier& after, const Changes& changes) {
  chapter.heading("What changed", 1);
  if (changes.changes.empty()) {
    chapter.say("No field of the stand file differs.");
    return;
  }
  chapter.table(change_table(before, after, changes));
  chapter.say(
      "“Read by” names the jobs whose own check reads the value; a blank there means that it is not told. Through the "
      "choice of the fit any change may bear on every job.",
      Tone::muted);
}

std::string fit_words(const Dossier& before, const Dossier& after) {
  const auto* was = selection::recommended(before);
  const auto* is = selection::recommended(after);
  if (was == nullptr && is == nullptr) return "No fit is recommended, before or after.";
  if (was == nullptr) return "A fit is recommended now: " + report::words_of(is->fit) + ".";
  if (is == nullptr) return "No fit is recommended any more; it was " + report::words_of(was->fit) + ".";
  if (was->fit == is->fit) return "The recommended fit stays " + report::words_of(is->fit) + ".";
  return "The recommended fit was " + report::words_of(was->fit) + "; it is now " + report::words_of(is->fit) + ".";
}

/// Jobs whose state is another one, by where they go.
void moved(Chapter& chapter, const Dossier& before, const Dossier& after, const std::vector<Both>& jobs) {
  std::vector<std::string> items;
  const auto say = [&](const std::string& what, const std::vector<std::string>& names) {
    if (!names.empty()) items.push_back(what + ": " + report::names(names));
  };
  for (const State from : {State::holds, State::tight, State::fails})
    for (const State to : {State::fails, State::tight, State::holds}) {
      std::vector<std::string> names;
      for (const Both& both : jobs)
        if (from != to && both.first != nullptr && both.second != nullptr && both.first->state == from &&
            both.second->state == to)
          names.push_back(both.job);
      say(fmt::format("{} → {}", key_of(from), key_of(to)), names);
    }
  say("came into the mix", sides::only_in(after, before));
  say("left the mix", sides::only_in(before, after));
  if (items.empty()) items.emplace_back("every job keeps its state");
  chapter.items(std::move(items));
}

void job_by_job(Chapter& chapter, const Dossier& before, const Dossier& after, const std::vector<Both>& jobs) {
  const auto table = [&] { return sides::Jobs(before, after, jobs, {"before", "after"}); };
  chapter.heading("Job by job", 1);
  chapter.table(table()
                    .words("state", sides::state_cell)
                    .words("in hand", sides::in_hand)
                    .words("binding limit", sides::binding)
                    .under("State, and what is in hand of the limit that binds"));
  chapter.table(table()
                    .results("run torque", Quantity::torque, sides::run_torque, 3)
                    .results("hottest disc", Quantity::temperature, sides::hottest, 3)
                    .results("pad life", Quantity::running_time, sides::pad_life, 2)
                    .under("Torque, heat and wear; the torque of a steady run at the full roll, of the whole stand"));
}

}  // namespace

Paper change_list(const Dossier& before, const Dossier& after, const Changes& changes) {
  Paper paper;
  paper.kind = Kind::change_list;
  paper.file = "change-list";
  paper.title = std::string(name_of(Kind::change_list));
  paper.subject = after.stand.title;
  paper.date = after.date;
  const auto named = [](const Dossier& dossier) {
    const auto file = dossier.file.empty() ? std::string("not named") : dossier.file;
    return dossier.date.empty() ? file : file + ", " + dossier.date;
  };
  Chapter chapter(after.system);
  chapter.facts({{"before", named(before)}, {"after", named(after)}, {"changed", count_of(changes)}}, 1);
  sides::verdict(chapter, before, "before");
  sides::verdict(chapter, after, "after");
  what_changed(chapter, before, after, changes);
  chapter.heading("What that does", 1);
  chapter.say(fit_words(before, after));
  chapter.table({"",
                 {{"", "", false}, {"before", "", false}, {"after", "", false}},
                 sides::choice_rows(before, after),
                 0,
                 false});
  const auto jobs = sides::jobs_of(before, after);
  moved(chapter, before, after, jobs);
  job_by_job(chapter, before, after, jobs);
  paper.blocks = chapter.take();
  return paper;
}

}  // namespace holdback::papers
