// Pads: how long they last on each job run alone, how many the mix takes a year, and what that costs.
#include <fmt/format.h>

#include "holdback/papers/report_parts.hpp"
#include "holdback/report/phrase.hpp"

namespace holdback::papers::selection {

namespace {

using Number = std::optional<double>;

Table life_table(const std::vector<JobFit>& jobs, const std::string& currency, units::System system) {
  const auto of = [](auto WearFacts::*member) { return [member](const JobFit& job) { return job.wear.*member; }; };
  Rows<JobFit> rows(jobs, system);
  rows.text("job", &JobFit::job)
      .result("pads last", Quantity::running_time, of(&WearFacts::life), 2)
      .result(
          "followed through the roll", Quantity::running_time,
          [](const JobFit& job) { return job.thermal ? Number(job.thermal->pad_life) : Number{}; }, 2)
      .result("at the shifts", Quantity::calendar_time, of(&WearFacts::weeks), 2)
      .result("web until then", Quantity::web_length, of(&WearFacts::web_length), 2)
      .result("rolls until then", Quantity::number, of(&WearFacts::rolls), 2)
      .result("pads a year", Quantity::number, of(&WearFacts::pads_per_year), 2)
      .result("cost a year", Quantity::price, of(&WearFacts::cost_per_year), 2)
      .cells({"life in hand", "", true}, [](const JobFit& job) { return in_hand_of(job.limits, LimitId::pad_life); });
  return rows.under("Each job run alone" + (currency.empty() ? std::string{} : "; costs in " + currency));
}

}  // namespace

void pads(Chapter& chapter, const Dossier& dossier) {
  const auto* best = recommended(dossier);
  if (best == nullptr || best->jobs.empty()) return;
  const auto system = chapter.system();
  const auto& currency = dossier.size.choice->currency;
  auto mix = fmt::format("The mix by its shares takes {} pads a year at the line's shifts",
                         meant(best->pads_per_year, Quantity::number, system, 2));
  if (best->pad_cost_per_year)
    mix += ", costing " + meant(*best->pad_cost_per_year, Quantity::price, system, 2) +
           (currency.empty() ? "" : "\u00A0" + currency);
  chapter.say(mix +
              ". Wear follows friction energy and temperature; two digits of it are meant at most. Measure the "
              "pads on the machine: a history of a few readings forecasts better than any wear rate.");
  chapter.table(life_table(best->jobs, currency, system));
}

}  // namespace holdback::papers::selection
