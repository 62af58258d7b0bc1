#include "holdback/papers/card_parts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "holdback/papers/report_parts.hpp"
#include "holdback/report/phrase.hpp"

namespace holdback::papers::cards {

namespace {

template <typename Thing>
const Thing* called(const std::vector<Thing>& things, std::string_view name, std::string Thing::*member) {
  const auto found = std::find_if(things.begin(), things.end(), [&](const Thing& one) { return one.*member == name; });
  return found == things.end() ? nullptr : &*found;
}

}  // namespace

const Job* find_job(const Dossier& dossier, std::string_view job) {
  return called(dossier.stand.jobs, job, &Job::name);
}

const JobFit* find_fit(const Dossier& dossier, std::string_view job) {
  return called(selection::jobs_on_fit(dossier), job, &JobFit::job);
}

const Measurement* find_push(const Dossier& dossier, std::string_view job) {
  for (const Answer& answer : dossier.pushes)
    if (answer.measurement && answer.measurement->job == job) return &*answer.measurement;
  return nullptr;
}

const Brake* find_brake(const Stand& stand, const Fit& fit) { return called(stand.brakes, fit.brake, &Brake::name); }

const Grade* find_grade(const Stand& stand, const Fit& fit) {
  const Brake* brake = find_brake(stand, fit);
  return brake == nullptr ? nullptr : called(brake->grades, fit.grade, &Grade::name);
}

std::string waiting(double seconds) {
  constexpr double minute = 60;
  constexpr double hour = 3600;
  if (!std::isfinite(seconds)) return "without end";
  if (seconds <= 2 * minute) return report::kept_together(fmt::format("{:.0f} s", std::ceil(seconds)));
  if (seconds <= 3 * hour) return report::kept_together(fmt::format("{:.0f} min", std::ceil(seconds / minute)));
  return report::kept_together(fmt::format("{:.0f} h", std::ceil(seconds / hour)));
}

std::string degrees(double kelvin, units::System system) {
  const double number = units::in_display_unit(kelvin, Quantity::temperature, system);
  return report::kept_together(fmt::format("{:.0f} {}", number, units::unit_of(Quantity::temperature, system)));
}

std::string range(double from, double to, Quantity kind, units::System system) {
  const auto numbers = selection::column_text({from, to}, kind, system, 3);
  const auto unit = units::unit_of(kind, system);
  return report::kept_together(fmt::format("{} to {}{}{}", numbers[0], numbers[1], unit.empty() ? "" : " ", unit));
}

std::string file_part(std::string_view name) {
  constexpr std::size_t longest = 60;
  std::string out;
  for (const char c : name) {
    const char small = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    const bool kept = (small >= 'a' && small <= 'z') || (small >= '0' && small <= '9');
    if (kept) out += small;
    if (!kept && !out.empty() && out.back() != '-') out += '-';
    if (out.size() >= longest) break;
  }
  while (!out.empty() && out.back() == '-') out.pop_back();
  return out.empty() ? "job" : out;
}

std::string brakes_of(const Fit& fit) { return fmt::format("{} × {}, grade {}", fit.brakes, fit.brake, fit.grade); }

}  // namespace holdback::papers::cards
