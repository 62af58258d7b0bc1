// A small collector for the validity functions: the path is said once, each fault adds its field, sentence and remedy.
#pragma once

#include <string>
#include <utility>

#include "holdback/model/problem.hpp"

namespace holdback {

class Faults {
 public:
  /// `path` is the owner's place in the stand file, such as "roll[1]"; empty for the file as a whole.
  explicit Faults(std::string path) : path_(std::move(path)) {}

  /// A fault that forbids a computation, at `field` of the owner (empty: the owner itself).
  void error(const std::string& field, Note what, Note accepted = {}) {
    add(Severity::error, field, std::move(what), std::move(accepted));
  }

  /// A doubt that does not forbid a computation.
  void warning(const std::string& field, Note what, Note accepted = {}) {
    add(Severity::warning, field, std::move(what), std::move(accepted));
  }

  void append(const Problems& others) { problems_.insert(problems_.end(), others.begin(), others.end()); }

  Problems take() { return std::move(problems_); }

 private:
  void add(Severity severity, const std::string& field, Note what, Note accepted) {
    Problem problem;
    problem.severity = severity;
    problem.what = std::move(what);
    problem.field = path_.empty() || field.empty() ? path_ + field : path_ + "." + field;
    problem.accepted = std::move(accepted);
    problems_.push_back(std::move(problem));
  }

  std::string path_;
  Problems problems_{};
};

}  // namespace holdback
