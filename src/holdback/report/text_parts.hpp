// The text answers, one a command. Each fills a sheet; text() picks by what the answer holds.
#pragma once

#include "holdback/report/sheet.hpp"
#include "holdback/results/answer.hpp"

namespace holdback::report {

/// The stand as understood.
void check_text(Sheet& sheet, const Answer& answer);

/// The fit for the mix: why it, the jobs on it, what falls out, the picture of the hardest job.
void choice_text(Sheet& sheet, const Answer& answer);

/// One job in depth on the recommended fit.
void job_text(Sheet& sheet, const Answer& answer);

/// Pressures over the roll and the hand card of each job.
void plan_text(Sheet& sheet, const Answer& answer);

/// A job run through a scenario, under one control or several side by side.
void simulate_text(Sheet& sheet, const Answer& answer);

/// Settings of a control and what they hold.
void tune_text(Sheet& sheet, const Answer& answer);

/// The tension from readings on site.
void measure_text(Sheet& sheet, const Answer& answer);

/// A real brake, fitted to readings.
void fit_text(Sheet& sheet, const Answer& answer);

/// What a log says.
void diagnose_text(Sheet& sheet, const Answer& answer);

/// What is kept of a stand over the years.
void history_text(Sheet& sheet, const Answer& answer);

/// What is said of a run wherever one is shown: that it stopped by a fault (nothing when it did not), its state with
/// the verdict, its phases as a table, the numbers that sum it up.
void fault_text(Sheet& sheet, const MotionRun& run);
void verdict_text(Sheet& sheet, const MotionRun& run);
void phases_text(Sheet& sheet, const std::vector<PhaseFacts>& phases);
void run_text(Sheet& sheet, const MotionRun& run);

/// The picture of torque over diameter with its heading.
void picture_text(Sheet& sheet, const Envelope& envelope, const std::string& job);

/// The jobs of the recommended fit in depth: tension windows, heat, likelihood.
void depth_text(Sheet& sheet, const Choice& choice);

/// One job in depth, part by part.
void window_text(Sheet& sheet, const TensionWindow& window);
void thermal_text(Sheet& sheet, const ThermalFacts& heat);
void shaft_text(Sheet& sheet, const ShaftFacts& shaft);
void likelihood_text(Sheet& sheet, const Likelihood& likelihood);

/// How the columns of a table of jobs were understood: one line when each header is a key, else a table. Nothing when
/// no table was given.
void columns_text(Sheet& sheet, const std::vector<ColumnRead>& columns);

/// A job that falls out: why, which limits fail, and what was found to bring it in.
void uncovered_text(Sheet& sheet, const Uncovered& uncovered);

}  // namespace holdback::report
