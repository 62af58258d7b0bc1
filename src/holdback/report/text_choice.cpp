// `size` for the whole mix.
#include <fmt/format.h>

#include <algorithm>

#include "holdback/report/phrase.hpp"
#include "holdback/report/text_parts.hpp"

namespace holdback::report {

namespace {

using draw::Ink;

std::string coverage(const FitResult& result, std::size_t jobs) {
  std::string out = fmt::format("covers {} of {}", result.covered, counted(static_cast<int>(jobs), "job"));
  if (result.tight > 0) out += fmt::format(", {} of them tight", result.tight);
  return out;
}

std::string weakest(const FitResult& result) {
  if (result.covered == 0) return {};
  return fmt::format("least in hand {}: {}, {}", kept_together(in_hand(result.worst_margin)),
                     info(result.worst_limit).name, named(result.worst_job));
}

std::string upkeep(const FitResult& result, const std::string& currency) {
  const auto number = [](double value, Quantity kind, int digits) {
    return units::show_number(value, kind, units::System::si, digits);
  };
  std::string out = number(result.pads_per_year, Quantity::number, 2) + " pads a year";
  if (result.pad_cost_per_year) out += ", costing " + number(*result.pad_cost_per_year, Quantity::price, 3);
  if (result.price) out += "; brakes " + number(*result.price, Quantity::price, 3);
  const bool priced = result.price || result.pad_cost_per_year;
  return out + (priced && !currency.empty() ? " (" + currency + ")" : "");
}

/// How far the fit goes, and what must not be run on it.
void coverage_text(Sheet& sheet, const FitResult& best) {
  const auto jobs = static_cast<int>(best.jobs.size());
  sheet.paragraph(coverage(best, best.jobs.size()), Ink::plain, 2, true);
  if (best.covered == jobs) return;
  const auto failing = best.covered == 0 ? std::string("Every job fails on it")
                                         : counted(jobs - best.covered, "job") +
                                               (jobs - best.covered == 1 ? " fails on it" : " fail on it");
  sheet.paragraph(failing + ": not to be run on this fit without a change; see what falls out.", Ink::bad, 2, true);
}

void recommended_text(Sheet& sheet, const Choice& choice) {
  const auto system = sheet.style().system;
  const bool none = choice.recommended && choice.recommended->covered == 0;
  sheet.section(none ? "No fit covers a job; the one that comes nearest" : "Recommended fit");
  if (!choice.recommended) {
    sheet.paragraph("None: the stand has no brake to choose from.", Ink::bad);
    return;
  }
  const auto& best = *choice.recommended;
  sheet.paragraph(words_of(best.fit), Ink::strong);
  coverage_text(sheet, best);
  const auto least = weakest(best);
  if (!least.empty()) sheet.paragraph(least, Ink::plain, 2, true);
  sheet.paragraph(upkeep(best, choice.currency), Ink::plain, 2, true);
  if (!choice.why.text.empty()) sheet.paragraph("Why: " + filled(choice.why, system), Ink::plain, 2, true);
  if (choice.next) {
    const auto second = weakest(*choice.next);
    sheet.paragraph(fmt::format("Next: {}; {}{}{}", words_of(choice.next->fit),
                                coverage(*choice.next, best.jobs.size()), second.empty() ? "" : "; ", second),
                    Ink::plain, 2, true);
  }
  sheet.paragraph(fmt::format("Chosen from {}.", counted(choice.fits_tried, "fit")));
}

void jobs_table(Sheet& sheet, const std::vector<JobFit>& jobs) {
  const auto system = sheet.style().system;
  const auto unit = [system](Quantity kind) { return unit_head(kind, system); };
  const auto full = column_of(jobs, &JobFit::pressure_full, Quantity::pressure, system);
  const auto core = column_of(jobs, &JobFit::pressure_core, Quantity::pressure, system);
  const auto hot = column_of(jobs, &JobFit::hottest, Quantity::temperature, system);
  const auto where = column_of(jobs, &JobFit::hottest_diameter, Quantity::short_length, system);
  const auto life = column_of(
      jobs, [](const JobFit& job) { return job.wear.life; }, Quantity::running_time, system);
  Table table({{"job", false, true, ""},
               {"pairs\non", true, false, ""},
               {"full\n" + unit(Quantity::pressure), true, false, "pressure"},
               {"core\n" + unit(Quantity::pressure), true, false, "pressure"},
               {"disc\n" + unit(Quantity::temperature), true, false, "hottest"},
               {"at Ø\n" + unit(Quantity::short_length), true, false, "hottest"},
               {"pads\nlast\n" + unit(Quantity::running_time), true, false, ""},
               {"state", false, false, ""},
               {"in\nhand", true, false, ""},
               {"binding limit", false, false, ""}});
  for (std::size_t i = 0; i < jobs.size(); ++i) {
    const auto& job = jobs[i];
    table.row({{job.job},
               {std::to_string(job.pairs)},
               {full[i]},
               {core[i]},
               {hot[i]},
               {where[i]},
               {life[i]},
               cell_of(job.state),
               {in_hand(job.margin), ink_of(job.state)},
               {std::string(info(job.binding).name)}});
  }
  sheet.section("Jobs on this fit");
  sheet.table(table);
}

void thrown_slack(Sheet& sheet, const std::vector<JobFit>& jobs) {
  const auto system = sheet.style().system;
  for (const auto& job : jobs) {
    for (const auto& [stop, name] :
         {std::pair{&job.stop, "a normal stop"}, std::pair{&job.emergency_stop, "an emergency stop"}}) {
      std::string what;
      if (stop->runs_away) what = "finds nothing that stops the roll";
      if (stop->slack > 0)
        what = fmt::format("throws {} of slack {}", slack_of(stop->slack, system),
                           at_diameter(stop->slack_diameter, system));
      if (!what.empty()) sheet.paragraph(fmt::format("{}: {} {}", named(job.job), name, what), Ink::bad, 2, true);
    }
  }
}

/// Every limit of every job: what is in hand, limits down, jobs across by number.
void limits_matrix(Sheet& sheet, const std::vector<JobFit>& jobs) {
  constexpr std::size_t across = 8;
  sheet.section("In hand, every limit (~ tight, ! fails)");
  for (std::size_t from = 0; from < jobs.size(); from += across) {
    const auto to = std::min(from + across, jobs.size());
    std::vector<Column> columns{{"limit", false, false, ""}};
    for (auto i = from; i < to; ++i) {
      columns.push_back({"job " + std::to_string(i + 1), true, false, ""});
      sheet.paragraph(fmt::format("job {}: {}", i + 1, jobs[i].job), Ink::plain, 2, true);
    }
    Table table(std::move(columns));
    for (int id = 0; id < limit_count; ++id) {
      std::vector<Cell> row{{std::string(info(static_cast<LimitId>(id)).name)}};
      bool any = false;
      for (auto i = from; i < to; ++i) {
        const auto* limit = find(jobs[i].limits, static_cast<LimitId>(id));
        any = any || limit != nullptr;
        const std::string mark = limit == nullptr || limit->state == State::holds ? ""
                                 : limit->state == State::tight                   ? "~"
                                                                                  : "!";
        row.push_back(limit == nullptr ? Cell{"–"} : Cell{mark + in_hand(limit->margin), ink_of(limit->state)});
      }
      if (any) table.row(std::move(row));
    }
    sheet.table(table);
  }
}

void all_fits(Sheet& sheet, const std::vector<FitResult>& fits) {
  Table table({{"brakes", true, false, ""},
               {"brake", false, true, ""},
               {"pairs", true, false, ""},
               {"grade", false, true, ""},
               {"covered", true, false, ""},
               {"tight", true, false, ""},
               {"in hand", true, false, ""},
               {"binding limit", false, false, ""},
               {"of job", false, true, ""},
               {"pads\na year", true, false, ""}});
  for (const auto& fit : fits) {
    const bool any = fit.covered > 0;
    table.row({{std::to_string(fit.fit.brakes)},
               {fit.fit.brake},
               {std::to_string(fit.fit.pairs)},
               {fit.fit.grade},
               {std::to_string(fit.covered)},
               {std::to_string(fit.tight)},
               {any ? in_hand(fit.worst_margin) : "–"},
               {any ? std::string(info(fit.worst_limit).name) : "–"},
               {any ? fit.worst_job : "–"},
               {units::show_number(fit.pads_per_year, Quantity::number, units::System::si, 2)}});
  }
  sheet.section("Every fit tried, best first");
  sheet.table(table);
}

/// What single jobs have to say, told once with the jobs it is said of.
std::vector<Note> job_notes(const std::vector<JobFit>& jobs) {
  std::vector<std::pair<Note, std::vector<std::string>>> said;
  for (const auto& job : jobs) {
    for (const auto& note : job.notes) {
      const auto same = std::find_if(said.begin(), said.end(), [&](const auto& each) { return each.first == note; });
      auto& entry = same == said.end() ? said.emplace_back(note, std::vector<std::string>{}) : *same;
      entry.second.push_back(job.job);
    }
  }
  std::vector<Note> out;
  for (auto& [note, of] : said) {
    const bool every = of.size() == jobs.size() && jobs.size() > 1;
    out.push_back({note.text + (every ? " (every job)" : " (" + names(of) + ")"), note.amounts});
  }
  return out;
}

}  // namespace

void choice_text(Sheet& sheet, const Answer& answer) {
  const auto& choice = *answer.choice;
  sheet.title(choice.title.empty() ? "The fit for the mix" : choice.title + ": the fit for the mix");
  recommended_text(sheet, choice);
  auto assumptions = choice.assumptions;
  if (choice.recommended) {
    const auto& jobs = choice.recommended->jobs;
    jobs_table(sheet, jobs);
    thrown_slack(sheet, jobs);
    depth_text(sheet, choice);
    if (sheet.style().all) limits_matrix(sheet, jobs);
    const auto of_jobs = job_notes(jobs);
    assumptions.insert(assumptions.end(), of_jobs.begin(), of_jobs.end());
  }
  if (!choice.uncovered.empty()) sheet.section("What falls out");
  for (const auto& uncovered : choice.uncovered) uncovered_text(sheet, uncovered);
  if (choice.envelope) picture_text(sheet, *choice.envelope, choice.envelope->job);
  if (sheet.style().all && !choice.all.empty()) all_fits(sheet, choice.all);
  columns_text(sheet, answer.columns);
  closing(sheet, answer.defaults, assumptions, choice.cautions);
}

}  // namespace holdback::report
