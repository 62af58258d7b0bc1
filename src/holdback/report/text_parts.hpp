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

/// The picture of torque over diameter with its heading.
void picture_text(Sheet& sheet, const Envelope& envelope, const std::string& job);

/// A job that falls out: why, which limits fail, and what was found to bring it in.
void uncovered_text(Sheet& sheet, const Uncovered& uncovered);

}  // namespace holdback::report
