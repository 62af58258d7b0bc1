#include <algorithm>
#include <cmath>

#include "holdback/api/on_site.hpp"
#include "holdback/field/history.hpp"
#include "holdback/files/history_file.hpp"
#include "holdback/sizing/choose.hpp"

namespace holdback::api {

namespace {

/// How long a set of pads lasts by the stand file: the mix by its shares, or one job, on the fit that `size`
/// recommends.
std::optional<field::StandWear> expected_wear(const Stand& stand, const Request& request) {
  sizing::ChooseOptions options{request.job,    false,           request.brake, request.grade,
                                request.brakes, request.threads, true};
  const Choice choice = sizing::choose(stand, options);
  if (!choice.recommended) return std::nullopt;
  double shares = 0;
  double worn = 0;   // of a set of pads, a second
  double power = 0;  // [W]
  const auto& jobs = choice.recommended->jobs;
  for (std::size_t i = 0; i < std::min(jobs.size(), stand.jobs.size()); ++i) {
    if (!request.job.empty() && jobs[i].job != request.job) continue;
    const double share = request.job.empty() ? stand.jobs[i].share : 1;
    if (!(jobs[i].wear.life > 0) || !std::isfinite(jobs[i].wear.life)) continue;
    shares += share;
    worn += share / jobs[i].wear.life;
    power += share * jobs[i].slip_power;
  }
  const auto brake = std::find_if(stand.brakes.begin(), stand.brakes.end(),
                                  [&](const Brake& each) { return each.name == choice.recommended->fit.brake; });
  if (!(worn > 0) || !(power > 0) || brake == stand.brakes.end()) return std::nullopt;
  return field::StandWear{brake->usable_pad_depth, {shares / worn, power / worn}};
}

/// The entries of the stand that is asked for; a problem when it must be named, or is not there.
std::vector<HistoryEntry> entries_of_one(const HistoryRequest& request, files::HistoryFile& file) {
  const auto stands = files::stands_of(file.entries);
  const bool known = std::find(stands.begin(), stands.end(), request.stand) != stands.end();
  const std::string wanted = request.stand.empty() && stands.size() == 1 ? stands.front() : request.stand;
  if (!known && !(request.stand.empty() && stands.size() == 1)) {
    Problem problem;
    problem.file = request.entries.name;
    problem.what = {request.stand.empty() ? "the table holds several stands" : "the table holds no stand of this name"};
    problem.field = "stand";
    problem.value = request.stand;
    for (const std::string& name : stands)
      problem.accepted.text += (problem.accepted.text.empty() ? "one of: " : ", ") + name;
    file.problems.push_back(std::move(problem));
    return {};
  }
  std::vector<HistoryEntry> entries;
  std::copy_if(file.entries.begin(), file.entries.end(), std::back_inserter(entries),
               [&](const HistoryEntry& entry) { return entry.stand == wanted; });
  return entries;
}

}  // namespace

void history(const Stand* stand, const Request& request, Answer& answer) {
  const HistoryRequest& asked = *request.history;
  files::HistoryFile file = files::read_history(asked.entries.text, asked.entries.name);
  std::vector<HistoryEntry> entries;
  if (!has_errors(file.problems)) entries = entries_of_one(asked, file);
  answer.problems.insert(answer.problems.end(), file.problems.begin(), file.problems.end());
  if (has_errors(answer.problems)) {
    answer.outcome = Outcome::bad_input;
    return;
  }
  const auto wear = stand != nullptr ? expected_wear(*stand, request) : std::nullopt;
  answer.history = field::history_of(std::move(entries), wear);
  if (stand != nullptr) answer.history->title = stand->title;
  answer.outcome = field::worn_out(*answer.history) ? Outcome::fails : Outcome::holds;
}

}  // namespace holdback::api
