#include "holdback/papers/side_by_side.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <map>
#include <utility>

#include "holdback/report/phrase.hpp"

namespace holdback::papers::sides {

namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();

Cell plain(std::string text) { return {std::move(text), Tone::normal, false, State::holds}; }

std::map<std::string, const JobFit*> by_name(const Dossier& dossier) {
  std::map<std::string, const JobFit*> out;
  for (const JobFit& job : selection::jobs_on_fit(dossier)) out.emplace(job.job, &job);
  return out;
}

bool has(const Dossier& dossier, const std::string& job) {
  const auto& jobs = dossier.stand.jobs;
  return std::any_of(jobs.begin(), jobs.end(), [&](const Job& each) { return each.name == job; });
}

std::string amount(double value, Quantity kind, int digits, units::System system, const std::string& currency = {}) {
  auto text = selection::meant(value, kind, system, digits);
  return currency.empty() ? text : text + " " + currency;
}

/// What one choice comes to, line by line.
std::vector<std::pair<std::string, std::string>> facts_of(const Dossier& dossier, units::System system) {
  const auto* best = selection::recommended(dossier);
  const auto currency = dossier.size.choice ? dossier.size.choice->currency : std::string{};
  const auto money = [&](const std::optional<double>& value) {
    return value ? amount(*value, Quantity::price, 3, system, currency) : std::string("not known");
  };
  std::vector<std::pair<std::string, std::string>> out{
      {"recommended fit", best != nullptr ? report::words_of(best->fit) : "none"}};
  const auto fact = [&](const std::string& what, const std::string& text) {
    out.emplace_back(what, best != nullptr ? text : "–");
  };
  const FitResult none;
  const FitResult& fit = best != nullptr ? *best : none;
  const auto some = fit.covered > 0;
  fact("jobs covered", fmt::format("{} of {}", fit.covered, dossier.stand.jobs.size()));
  fact("of these, tight", fmt::format("{}", fit.tight));
  fact("least in hand, of those covered", some ? report::kept_together(report::in_hand(fit.worst_margin)) : "–");
  fact("by which limit", some ? std::string(info(fit.worst_limit).name) : "–");
  fact("in which job", some ? fit.worst_job : "–");
  fact("pads a year", amount(fit.pads_per_year, Quantity::number, 2, system));
  fact("pads, cost a year", money(fit.pad_cost_per_year));
  fact("brakes, price", money(fit.price));
  return out;
}

}  // namespace

std::vector<Both> jobs_of(const Dossier& first, const Dossier& second) {
  auto a = by_name(first);
  auto b = by_name(second);
  const auto of = [](const std::map<std::string, const JobFit*>& jobs, const std::string& name) {
    const auto found = jobs.find(name);
    return found == jobs.end() ? nullptr : found->second;
  };
  std::vector<Both> out;
  for (const Job& job : first.stand.jobs) out.push_back({job.name, of(a, job.name), of(b, job.name)});
  for (const auto& name : only_in(second, first)) out.push_back({name, nullptr, of(b, name)});
  return out;
}

std::vector<std::string> only_in(const Dossier& one, const Dossier& other) {
  std::vector<std::string> out;
  for (const Job& job : one.stand.jobs)
    if (!has(other, job.name)) out.push_back(job.name);
  return out;
}

State state_of(const Dossier& dossier) {
  const auto* best = selection::recommended(dossier);
  if (best == nullptr || best->covered < static_cast<int>(dossier.stand.jobs.size())) return State::fails;
  return best->tight > 0 ? State::tight : State::holds;
}

void verdict(selection::Chapter& chapter, const Dossier& dossier, const std::string& side) {
  const auto* best = selection::recommended(dossier);
  const State state = state_of(dossier);
  auto text = fmt::format("{}: {}, ", key_of(state), side);
  if (best == nullptr) return chapter.verdict(state, text + "no fit was found");
  text += fmt::format("{} of {} covered", best->covered,
                      report::counted(static_cast<int>(dossier.stand.jobs.size()), "job"));
  if (best->tight > 0) text += fmt::format(", {} of them tight", best->tight);
  chapter.verdict(state, text + ", by " + report::words_of(best->fit));
}

std::vector<std::vector<Cell>> choice_rows(const Dossier& first, const Dossier& second) {
  const auto a = facts_of(first, first.system);
  const auto b = facts_of(second, first.system);
  std::vector<std::vector<Cell>> rows;
  for (std::size_t i = 0; i < a.size(); ++i) {
    const auto tone = a[i].second == b[i].second ? Tone::normal : Tone::strong;  // what differs stands out
    rows.push_back(
        {plain(a[i].first), {a[i].second, tone, false, State::holds}, {b[i].second, tone, false, State::holds}});
  }
  return rows;
}

Jobs::Jobs(const Dossier& first, const Dossier& second, const std::vector<Both>& jobs, std::vector<std::string> heads)
    : first_(first), second_(second), jobs_(jobs), heads_(std::move(heads)) {
  table_.columns.push_back({"job", "", false});
  for (const Both& both : jobs_) table_.rows.push_back({plain(both.job)});
}

Jobs& Jobs::words(const std::string& head, const Word& word) {
  for (const auto& side : heads_) table_.columns.push_back({head + ", " + side, "", false});
  for (std::size_t i = 0; i < jobs_.size(); ++i)
    for (const JobFit* job : {jobs_[i].first, jobs_[i].second})
      table_.rows[i].push_back(job != nullptr ? word(*job) : plain("–"));
  return *this;
}

Jobs& Jobs::results(const std::string& head, Quantity kind, const Number& number, int digits) {
  std::vector<double> values;
  for (const Both& both : jobs_) {
    values.push_back(both.first != nullptr ? number(first_, *both.first) : nan);
    values.push_back(both.second != nullptr ? number(second_, *both.second) : nan);
  }
  const auto texts = selection::column_text(values, kind, first_.system, digits);
  for (const auto& side : heads_)
    table_.columns.push_back({head + ", " + side, units::unit_of(kind, first_.system), true});
  for (std::size_t i = 0; i < texts.size(); ++i) table_.rows[i / 2].push_back(plain(texts[i]));
  return *this;
}

Table Jobs::under(std::string caption) {
  table_.caption = std::move(caption);
  return std::move(table_);
}

double run_torque(const Dossier& dossier, const JobFit& job) {
  if (dossier.size.check)
    for (const auto& facts : dossier.size.check->jobs)
      if (facts.job == job.job) return facts.run_torque_full;
  const auto* plan = selection::plan_of(dossier, job.job);
  return plan != nullptr && !plan->automatic.empty() ? plan->automatic.front().torque : nan;
}

double slack_of(const StopFacts& stop) { return stop.runs_away ? nan : stop.slack; }

double hottest(const Dossier&, const JobFit& job) { return job.hottest; }
double pad_life(const Dossier&, const JobFit& job) { return job.wear.life; }

Cell state_cell(const JobFit& job) { return selection::state_cell(job.state); }

Cell in_hand(const JobFit& job) {
  return selection::judged(report::kept_together(report::in_hand(job.margin)), job.state);
}

Cell binding(const JobFit& job) { return plain(std::string(info(job.binding).name)); }

}  // namespace holdback::papers::sides
