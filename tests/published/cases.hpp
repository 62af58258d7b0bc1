// Cases of published values as text; the format is told in cases/README.md.
#pragma once

#include <map>
#include <string>
#include <vector>

namespace holdback::published {

/// One expectation about an evaluated number, its quantities still text.
struct Expectation {
  enum class Kind { agree, differ, range };
  Kind kind{};
  std::string value{};      // agree, differ: the value; range: the low end
  std::string tolerance{};  // agree, differ: relative or "print"; range: the high end
  int line{};
};

struct Evaluation {
  std::string function{};
  std::map<std::string, std::string> arguments{};
  std::vector<Expectation> expectations{};
  int line{};
};

struct Case {
  std::string id{};
  std::string title{};
  std::string source{};
  std::string mark{};
  std::string file{};
  int line{};
  std::vector<Evaluation> evaluations{};
  std::string fault{};  // why the case cannot be read; empty when it can
};

/// Cases in a text; what cannot be read becomes a fault of its case.
std::vector<Case> read_cases(const std::string& text, const std::string& file);

/// Cases of every .txt in a folder, by file name. An id that stands twice is a fault of the second.
std::vector<Case> read_folder(const std::string& folder);

}  // namespace holdback::published
