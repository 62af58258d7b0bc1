// Papers as PDF: vector figures, embedded fonts, page numbers, an outline. Nothing is computed or worded here.
#pragma once

#include <string>
#include <vector>

#include "holdback/papers/paper.hpp"

namespace holdback::pdf {

/// The sheet that it is printed on.
enum class Sheet { a4, letter };

struct Options {
  Sheet sheet{Sheet::a4};
  std::string created{};  // date in the metadata, ISO 8601: "2026-11-28"; empty or unreadable: none. Never the clock
};

/// What was written. The same papers and options give the same bytes.
struct Written {
  std::string bytes{};
  int pages{};
  std::vector<std::string> warnings{};  // "card-01-labels: does not fit on one page, takes 2"
};

/// One paper as PDF. Throws std::runtime_error when Cairo cannot write it.
Written pdf(const papers::Paper& paper, const Options& options);

/// Several papers in one PDF; each starts on a new page, with its own page numbers and its entry in the outline.
/// Throws std::invalid_argument when there is none.
Written pdf(const std::vector<papers::Paper>& papers, const Options& options);

}  // namespace holdback::pdf
