#include "holdback/numerics/wide.hpp"
#include "holdback/physics/wear.hpp"
#include "holdback/sizing/worked_parts.hpp"

namespace holdback::sizing {

namespace {

double mean_power(const WorkedCase& c) {
  return numerics::product_sum(c.demand.share_of_length.data(), c.pass.power.data(), radius_count);
}

/// How much faster hot pads wear, on average over the energy of the roll [1].
double mean_growth(const WorkedCase& c) {
  double grown = 0;
  for (std::size_t i = 0; i < radius_count; ++i)
    grown += c.demand.share_of_length[i] * c.pass.power[i] *
             physics::wear_growth(*c.grade.wear_knee, c.grade.wear_doubling, c.pass.temperature[i]);
  return grown / mean_power(c);
}

void add_volume(WorkedSteps& steps, const WorkedCase& c, const WorkedTerm& worn) {
  const bool hot = c.grade.wear_knee && c.survey.temperature.value > *c.grade.wear_knee;
  std::vector<WorkedTerm> terms{
      {"k", "wear rate of the grade", Quantity::wear_rate, c.grade.wear_rate},
      {"Q_mean", "slip power of all brakes, mean over the web's length", Quantity::power, mean_power(c)}};
  if (hot) {
    const WorkedTerm growth{"g", "growth of the wear by heat, mean over the roll", Quantity::number, mean_growth(c)};
    const std::size_t i = c.at(c.survey.temperature.diameter);
    add_balance(steps, c, i);
    steps.add_at(i,
                 {"wear_growth",
                  "growth of the wear by heat where the disc is hottest (" + c.place(i) + ")",
                  "2^((Theta@ − Theta_k) / dTheta_2)",
                  {c.temperature(i),
                   {"Theta_k", "temperature from which wear rises", Quantity::temperature, *c.grade.wear_knee},
                   {"dTheta_2", "rise that doubles the wear", Quantity::temperature_difference, c.grade.wear_doubling}},
                  {"g_most", "growth of the wear, highest", Quantity::number,
                   physics::wear_growth(*c.grade.wear_knee, c.grade.wear_doubling, c.pass.temperature[i])},
                  "the mean over the roll, used next, is below it",
                  by_practice});
    terms.push_back(growth);
  }
  steps.add({"worn_volume", "worn volume of all pads in a second, in m³/s", hot ? "k · Q_mean · g" : "k · Q_mean",
             terms, worn, "the mean weighs each diameter by the web that lies there; it is near T v", "archard1953"});
}

}  // namespace

void add_wear(WorkedSteps& steps, const WorkedCase& c) {
  const Limit* limit = c.limit(LimitId::pad_life);
  constexpr double shown_least = 1;    // [s] ends of what a life is given as
  constexpr double shown_most = 1e12;  // [s]
  if (limit == nullptr || !(c.survey.wear_volume_rate > 0)) return;
  const WorkedTerm worn{"V_worn", "worn volume of all pads in a second, in m³/s", Quantity::number,
                        c.survey.wear_volume_rate};
  add_volume(steps, c, worn);
  if (limit->value <= shown_least || limit->value >= shown_most) return;
  const WorkedTerm life{"t_life", "running time until the pads are worn", Quantity::running_time, limit->value};
  steps.add({"pad_life",
             life.name,
             "2 · N · n · A_pad · h_pad / V_worn",
             {c.brakes(),
              c.pairs(),
              {"A_pad", "face of one pad", Quantity::area, c.brake.pad_area},
              {"h_pad", "depth that may wear away", Quantity::short_length, c.brake.usable_pad_depth},
              worn},
             life,
             "all engaged pads share alike",
             "archard1953"});
  const Line& line = c.site.line;
  steps.add({"pad_life",
             "pads worn in a year of this job alone",
             "2 · N · n · h_day · n_days · n_weeks · u · 3600 / t_life",
             {c.brakes(),
              c.pairs(),
              {"h_day", "hours a day", Quantity::number, line.hours_per_day},
              {"n_days", "days a week", Quantity::number, line.days_per_week},
              {"n_weeks", "weeks a year", Quantity::number, line.weeks_per_year},
              {"u", "share of the shift in which web runs", Quantity::ratio, line.uptime},
              life},
             {"n_pads", "pads in a year", Quantity::number, c.fit.wear.pads_per_year},
             "",
             by_definition});
}

}  // namespace holdback::sizing
