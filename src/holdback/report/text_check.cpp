// `check`: the stand as understood, so that a wrong input shows by its consequence.
#include <fmt/format.h>

#include "holdback/report/phrase.hpp"
#include "holdback/report/text_parts.hpp"

namespace holdback::report {

namespace {

void jobs_table(Sheet& sheet, const Check& check) {
  const auto system = sheet.style().system;
  const auto width = column_of(check.jobs, &JobFacts::width, Quantity::short_length, system);
  const auto speed = column_of(check.jobs, &JobFacts::speed, Quantity::speed, system);
  const auto setpoint = column_of(
      check.jobs, [](const JobFacts& job) { return job.tension.setpoint; }, Quantity::force, system);
  const auto low = column_of(
      check.jobs, [](const JobFacts& job) { return job.tension.low; }, Quantity::force, system);
  const auto high = column_of(
      check.jobs, [](const JobFacts& job) { return job.tension.high; }, Quantity::force, system);
  const auto force = unit_head(Quantity::force, system);
  Table table({{"job", false, true, ""},
               {"web", false, true, ""},
               {"roll", false, true, ""},
               {"width\n" + unit_head(Quantity::short_length, system), true, false, ""},
               {"speed\n" + unit_head(Quantity::speed, system), true, false, ""},
               {"low\n" + force, true, false, "tension"},
               {"set\n" + force, true, false, "tension"},
               {"high\n" + force, true, false, "tension"},
               {"from", false, false, ""}});
  for (std::size_t i = 0; i < check.jobs.size(); ++i) {
    const auto& job = check.jobs[i];
    table.row({{job.job},
               {job.web},
               {job.roll},
               {width[i]},
               {speed[i]},
               {low[i]},
               {setpoint[i]},
               {high[i]},
               {job.tension.asked ? "the job" : job.tension.governed_by}});
  }
  sheet.section("Jobs as understood");
  sheet.table(table);
}

void rolls_table(Sheet& sheet, const Check& check) {
  const auto system = sheet.style().system;
  const auto over = [&](Quantity kind, auto get) { return column_of(check.jobs, get, kind, system); };
  const auto length = over(Quantity::web_length, [](const JobFacts& job) { return job.roll_facts.length; });
  const auto mass = over(Quantity::mass, [](const JobFacts& job) { return job.roll_facts.mass; });
  const auto time = over(Quantity::running_time, [](const JobFacts& job) { return job.roll_facts.running_time; });
  const auto power = over(Quantity::power, [](const JobFacts& job) { return job.slip_power; });
  const auto unit = [system](Quantity kind) { return unit_head(kind, system); };
  Table table({{"job", false, true, ""},
               {"web\non roll\n" + unit(Quantity::web_length), true, false, ""},
               {"full\nroll\n" + unit(Quantity::mass), true, false, ""},
               {"one roll\nruns\n" + unit(Quantity::running_time), true, false, ""},
               {"full\n" + unit(Quantity::inertia), true, false, "inertia"},
               {"core\n" + unit(Quantity::inertia), true, false, "inertia"},
               {"full\n" + unit(Quantity::torque), true, false, "run torque"},
               {"core\n" + unit(Quantity::torque), true, false, "run torque"},
               {"slip\npower\n" + unit(Quantity::power), true, false, ""}});
  for (std::size_t i = 0; i < check.jobs.size(); ++i) {
    const auto& job = check.jobs[i];
    const auto number = [system](double si, Quantity kind) { return units::show_number(si, kind, system); };
    table.row({{job.job},
               {length[i]},
               {mass[i]},
               {time[i]},
               {number(job.roll_facts.inertia_full, Quantity::inertia)},
               {number(job.roll_facts.inertia_core, Quantity::inertia)},
               {number(job.run_torque_full, Quantity::torque)},
               {number(job.run_torque_core, Quantity::torque)},
               {power[i]}});
  }
  sheet.section("What they ask of the brake");
  sheet.table(table);
  sheet.paragraph("Inertia without brake discs; torque in steady run with the drag of the shaft taken off.",
                  draw::Ink::faint);
}

}  // namespace

void check_text(Sheet& sheet, const Answer& answer) {
  const auto& check = *answer.check;
  sheet.title(check.title.empty() ? "The stand as understood" : check.title + ": the stand as understood");
  sheet.paragraph(fmt::format("{}, {}, {}, {}; {} for size to compare",
                              counted(static_cast<int>(check.jobs.size()), "job"), counted(check.webs, "web"),
                              counted(check.rolls, "roll"), counted(check.brakes, "brake"),
                              counted(check.fits, "fit")));
  if (!check.jobs.empty()) {
    jobs_table(sheet, check);
    rolls_table(sheet, check);
  }
  columns_text(sheet, answer.columns);
  closing(sheet, answer.defaults, {}, check.cautions);
}

}  // namespace holdback::report
