// Two stands, or two fits of one, side by side. What they were given is not compared here: that is the change list's.
#include <fmt/format.h>

#include <utility>

#include "holdback/papers/papers.hpp"
#include "holdback/papers/report_parts.hpp"
#include "holdback/papers/side_by_side.hpp"
#include "holdback/report/phrase.hpp"

namespace holdback::papers {

namespace {

using selection::Chapter;
using sides::Both;

std::string name_of(const Dossier& dossier) {
  auto out = dossier.stand.title;
  if (!dossier.file.empty()) out += ", " + dossier.file;
  if (!dossier.date.empty()) out += ", " + dossier.date;
  return out;
}

/// Jobs that one side covers and the other one fails.
std::vector<std::string> covered_only(const std::vector<Both>& jobs, const JobFit* Both::*by,
                                      const JobFit* Both::*not_by) {
  std::vector<std::string> out;
  for (const Both& both : jobs)
    if (both.*by != nullptr && both.*not_by != nullptr && (both.*by)->state != State::fails &&
        (both.*not_by)->state == State::fails)
      out.push_back(both.job);
  return out;
}

/// Of how many jobs one side has more in hand, as it is shown.
int more_in_hand(const std::vector<Both>& jobs, const JobFit* Both::*here, const JobFit* Both::*there) {
  int count = 0;
  for (const Both& both : jobs) {
    if (both.*here == nullptr || both.*there == nullptr) continue;
    const auto shown_here = report::in_hand((both.*here)->margin);
    if ((both.*here)->margin > (both.*there)->margin && shown_here != report::in_hand((both.*there)->margin)) ++count;
  }
  return count;
}

void differences(Chapter& chapter, const Dossier& first, const Dossier& second, const std::vector<Both>& jobs) {
  std::vector<std::string> items;
  const auto say = [&](const std::string& what, const std::vector<std::string>& names) {
    if (!names.empty()) items.push_back(what + ": " + report::names(names));
  };
  say("covered by A and not by B", covered_only(jobs, &Both::first, &Both::second));
  say("covered by B and not by A", covered_only(jobs, &Both::second, &Both::first));
  const int a = more_in_hand(jobs, &Both::first, &Both::second);
  const int b = more_in_hand(jobs, &Both::second, &Both::first);
  if (a + b > 0)
    items.push_back(
        fmt::format("more in hand: A in {}, B in {}", report::counted(a, "job"), report::counted(b, "job")));
  say("only in the mix of A", sides::only_in(first, second));
  say("only in the mix of B", sides::only_in(second, first));
  if (items.empty()) items.emplace_back("no job differs in what it has in hand");
  chapter.heading("Where they differ", 1);
  chapter.items(std::move(items));
}

void job_by_job(Chapter& chapter, const Dossier& first, const Dossier& second, const std::vector<Both>& jobs) {
  const auto table = [&] { return sides::Jobs(first, second, jobs, {"A", "B"}); };
  chapter.heading("Job by job", 1);
  chapter.table(table()
                    .results(
                        "pairs", Quantity::count, [](const Dossier&, const JobFit& job) { return 1.0 * job.pairs; }, 0)
                    .words("state", sides::state_cell)
                    .words("in hand", sides::in_hand)
                    .words("binding limit", sides::binding)
                    .under("State, and what is in hand of the limit that binds"));
  chapter.table(table()
                    .results("hottest disc", Quantity::temperature, sides::hottest, 3)
                    .results("pad life", Quantity::running_time, sides::pad_life, 2)
                    .results(
                        "slack, stop", Quantity::short_length,
                        [](const Dossier&, const JobFit& job) { return sides::slack_of(job.stop); }, 2)
                    .results(
                        "slack, emergency stop", Quantity::short_length,
                        [](const Dossier&, const JobFit& job) { return sides::slack_of(job.emergency_stop); }, 2)
                    .under("Heat, wear and stops; slack is web that is thrown, – where nothing stops the roll"));
}

}  // namespace

Paper comparison(const Dossier& first, const Dossier& second) {
  Paper paper;
  paper.kind = Kind::comparison;
  paper.file = "comparison";
  paper.title = std::string(name_of(Kind::comparison));
  const auto& a = first.stand.title;
  const auto& b = second.stand.title;
  Chapter chapter(first.system);
  chapter.facts({{"A", name_of(first)}, {"B", name_of(second)}}, 1);
  sides::verdict(chapter, first, "A");
  sides::verdict(chapter, second, "B");
  chapter.heading("The choice", 1);
  chapter.table(
      {"", {{"", "", false}, {"A", "", false}, {"B", "", false}}, sides::choice_rows(first, second), 0, false});
  const auto jobs = sides::jobs_of(first, second);
  differences(chapter, first, second, jobs);
  job_by_job(chapter, first, second, jobs);
  chapter.say(
      "Both sides stand on their own file, defaults and assumptions; what differs between two revisions of a "
      "file is in its change list.",
      Tone::muted);
  paper.subject = a == b ? a : a + " against " + b;
  paper.date = second.date.empty() ? first.date : second.date;
  paper.blocks = chapter.take();
  return paper;
}

}  // namespace holdback::papers
