// What the commands do. Each returns the exit code.
#pragma once

#include "holdback/results/answer.hpp"
#include "settings.hpp"

namespace holdback::cli {

/// check, size, plan: reads the stand, asks for the answer, writes it.
int answer_stand(const Settings& settings);

/// Writes an answer as the options ask: text, JSON or CSV, figures, traces and workbook, problems on standard error.
/// Answers with the exit code.
int deliver(const Answer& answer, const Settings& settings);

/// example: lists the invented stands, or writes one.
int show_example(const Settings& settings);

/// page: writes the page, one HTML file.
int write_page(const Settings& settings);

/// describe: schemas, file format, man page, completions; all derived from the tables of the program.
int describe(const Settings& settings);

}  // namespace holdback::cli
