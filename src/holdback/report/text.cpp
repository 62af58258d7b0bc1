#include "holdback/draw/terminal_plot.hpp"
#include "holdback/report/phrase.hpp"
#include "holdback/report/report.hpp"
#include "holdback/report/text_parts.hpp"

namespace holdback::report {

std::string text(const Answer& answer, const Style& style) {
  Sheet sheet(style);
  if (answer.check) check_text(sheet, answer);
  if (answer.choice && answer.choice->job) job_text(sheet, answer);
  if (answer.choice && !answer.choice->job) choice_text(sheet, answer);
  if (answer.plan) plan_text(sheet, answer);
  if (answer.simulation) simulate_text(sheet, answer);
  if (answer.tuning) tune_text(sheet, answer);
  if (answer.measurement) measure_text(sheet, answer);
  if (answer.fit) fit_text(sheet, answer);
  if (answer.diagnosis) diagnose_text(sheet, answer);
  if (answer.history) history_text(sheet, answer);
  return sheet.text();
}

void picture_text(Sheet& sheet, const Envelope& envelope, const std::string& job) {
  const auto& style = sheet.style();
  const auto picture =
      draw::terminal_plot(draw::envelope_plot(envelope), {style.width - 2, 14, style.system, style.colour});
  if (picture.empty()) return;
  sheet.section("Torque over the roll, job " + named(job));
  sheet.block(picture);
}

}  // namespace holdback::report
