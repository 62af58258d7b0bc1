// What the commands do. Each returns the exit code.
#pragma once

#include "holdback/api/answer.hpp"
#include "holdback/results/answer.hpp"
#include "settings.hpp"

namespace holdback::cli {

/// check, size, plan: reads the stand, asks for the answer, writes it.
int answer_stand(const Settings& settings);

/// What the options ask of the core; files that cannot be read become problems.
api::Request request_of(const Settings& settings, Problems& problems);

/// papers: writes PDFs into the folder that --out names.
int write_papers(const Settings& settings);

/// Writes an answer as the options ask: text, JSON or CSV, figures, traces and workbook, problems on standard error.
/// Answers with the exit code. `stand`: of which the figures hold an elevation; may be null.
int deliver(const Answer& answer, const Settings& settings, const Stand* stand = nullptr);

/// example: lists the invented stands, or writes one.
int show_example(const Settings& settings);

/// page: writes the page, one HTML file.
int write_page(const Settings& settings);

/// describe: schemas, file format, man page, completions; all derived from the tables of the program.
int describe(const Settings& settings);

}  // namespace holdback::cli
