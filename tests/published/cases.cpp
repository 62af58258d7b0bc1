#include "published/cases.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

namespace holdback::published {

namespace {

std::string trimmed(const std::string& text) {
  const auto begin = text.find_first_not_of(" \t\r");
  if (begin == std::string::npos) return "";
  return text.substr(begin, text.find_last_not_of(" \t\r") - begin + 1);
}

/// Text before and after the first `separator`, trimmed; false without one.
bool cut(const std::string& text, const std::string& separator, std::string& before, std::string& after) {
  const auto at = text.find(separator);
  if (at == std::string::npos) return false;
  before = trimmed(text.substr(0, at));
  after = trimmed(text.substr(at + separator.size()));
  return !before.empty() && !after.empty();
}

class Reader {
 public:
  explicit Reader(std::string file) : file_(std::move(file)) {}

  void read(const std::string& line) {
    ++line_;
    const std::string text = trimmed(line);
    if (text.empty() || text[0] == '#') return;
    const std::string word = text.substr(0, text.find(' '));
    const std::string rest = trimmed(text.substr(word.size()));
    if (word == "case") return begin(rest);
    if (cases_.empty()) begin("? | text before the first case");
    if (word == "source") {
      current().source = rest;
    } else if (word == "mark") {
      current().mark = rest;
    } else if (word == "evaluate") {
      evaluate(rest);
    } else if (word == "expect") {
      expect(Expectation::Kind::agree, rest, " within ");
    } else if (word == "reject") {
      expect(Expectation::Kind::differ, rest, " within ");
    } else if (word == "range") {
      expect(Expectation::Kind::range, rest, " .. ");
    } else {
      fault("no line begins with '" + word + "'");
    }
  }

  std::vector<Case> take() {
    for (Case& each : cases_) complete(each);
    return std::move(cases_);
  }

 private:
  Case& current() { return cases_.back(); }

  void fault(const std::string& why) {
    if (current().fault.empty()) current().fault = file_ + ":" + std::to_string(line_) + ": " + why;
  }

  void begin(const std::string& rest) {
    Case& made = cases_.emplace_back();
    made.file = file_;
    made.line = line_;
    if (!cut(rest, "|", made.id, made.title)) fault("expected: case id | title");
  }

  void evaluate(const std::string& rest) {
    Evaluation made;
    made.line = line_;
    made.function = rest.substr(0, rest.find(' '));
    std::istringstream parts(rest.substr(made.function.size()));
    for (std::string part; std::getline(parts, part, ',');) {
      std::string name, value;
      if (!cut(part, "=", name, value)) return fault("expected: name = value, not '" + trimmed(part) + "'");
      if (!made.arguments.emplace(name, value).second) return fault("'" + name + "' is given twice");
    }
    current().evaluations.push_back(std::move(made));
  }

  void expect(Expectation::Kind kind, const std::string& rest, const std::string& separator) {
    if (current().evaluations.empty()) return fault("an expectation before the first evaluate");
    Expectation made;
    made.kind = kind;
    made.line = line_;
    if (!cut(rest, separator, made.value, made.tolerance)) return fault("expected: … " + trimmed(separator) + " …");
    current().evaluations.back().expectations.push_back(std::move(made));
  }

  static void complete(Case& made) {
    const std::set<std::string> marks{"found", "memory", "computed", "common practice"};
    const auto lacks = [&](const std::string& what) {
      if (made.fault.empty()) made.fault = made.file + ":" + std::to_string(made.line) + ": " + made.id + " " + what;
    };
    if (made.source.empty()) lacks("names no source");
    if (!marks.contains(made.mark)) lacks("has no mark, or one that is not known: '" + made.mark + "'");
    if (made.evaluations.empty()) lacks("evaluates nothing");
    for (const Evaluation& each : made.evaluations) {
      if (each.expectations.empty()) lacks("expects nothing of " + each.function);
      for (const Expectation& expectation : each.expectations) {
        if (made.mark == "common practice" && expectation.kind == Expectation::Kind::agree)
          lacks("is common practice and may only state a range");
      }
    }
  }

  std::string file_;
  int line_{};
  std::vector<Case> cases_{};
};

}  // namespace

std::vector<Case> read_cases(const std::string& text, const std::string& file) {
  Reader reader(file);
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) reader.read(line);
  return reader.take();
}

std::vector<Case> read_folder(const std::string& folder) {
  std::vector<std::filesystem::path> files;
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    if (entry.path().extension() == ".txt") files.push_back(entry.path());
  }
  std::sort(files.begin(), files.end());

  std::vector<Case> all;
  std::set<std::string> ids;
  for (const auto& path : files) {
    std::ostringstream text;
    text << std::ifstream(path).rdbuf();
    for (Case& each : read_cases(text.str(), path.filename().string())) {
      if (!ids.insert(each.id).second) {
        each.fault = each.file + ": the id " + each.id + " stands twice";
        each.id += " again at line " + std::to_string(each.line);
      }
      all.push_back(std::move(each));
    }
  }
  return all;
}

}  // namespace holdback::published
