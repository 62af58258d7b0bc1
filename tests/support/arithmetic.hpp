// Arithmetic written out, for tests: numbers, named values, + − · / ^ ( ), sqrt exp ln sin cos tan, π. The ASCII signs
// - and * are read too. Powers bind closest and from the right, and a sign before a power stays outside of it.
#pragma once

#include <cmath>
#include <cstdlib>
#include <map>
#include <numbers>
#include <set>
#include <stdexcept>
#include <string>

namespace holdback::test {

class Arithmetic {
 public:
  Arithmetic(std::string text, std::map<std::string, double> values)
      : text_(std::move(text)), values_(std::move(values)) {}

  /// Throws std::invalid_argument where the text is not arithmetic in these names.
  double value() {
    at_ = 0;
    used_.clear();
    const double result = sum();
    if (at_ != text_.size()) fail("cannot go on");
    return result;
  }

  /// Names that the last evaluation met.
  const std::set<std::string>& used() const { return used_; }

 private:
  [[noreturn]] void fail(const std::string& what) const {
    throw std::invalid_argument(what + " at byte " + std::to_string(at_) + " of: " + text_);
  }

  void skip() {
    while (at_ < text_.size() && text_[at_] == ' ') ++at_;
  }

  bool take(const std::string& sign) {
    skip();
    if (text_.compare(at_, sign.size(), sign) != 0) return false;
    at_ += sign.size();
    skip();
    return true;
  }

  double sum() {
    double result = product();
    for (;;) {
      if (take("+"))
        result += product();
      else if (take("−") || take("-"))
        result -= product();
      else
        return result;
    }
  }

  double product() {
    double result = power();
    for (;;) {
      if (take("·") || take("*"))
        result *= power();
      else if (take("/"))
        result /= power();
      else
        return result;
    }
  }

  double power() {
    if (take("−") || take("-")) return -power();
    const double base = atom();
    return take("^") ? std::pow(base, power()) : base;
  }

  double atom() {
    if (take("(")) {
      const double inside = sum();
      if (!take(")")) fail("a bracket is not closed");
      return inside;
    }
    if (take("π")) return std::numbers::pi;
    skip();
    if (at_ < text_.size() && (std::isdigit(static_cast<unsigned char>(text_[at_])) != 0 || text_[at_] == '.'))
      return number();
    return named(name());
  }

  double number() {
    std::size_t end = at_;
    while (end < text_.size() && (std::isdigit(static_cast<unsigned char>(text_[end])) != 0 || text_[end] == '.'))
      ++end;
    const std::string digits = text_.substr(at_, end - at_);
    at_ = end;
    skip();
    return std::strtod(digits.c_str(), nullptr);
  }

  std::string name() {
    const std::size_t begin = at_;
    while (at_ < text_.size() && (std::isalnum(static_cast<unsigned char>(text_[at_])) != 0 || text_[at_] == '_'))
      ++at_;
    if (begin == at_) fail("a value is missing");
    const std::string read = text_.substr(begin, at_ - begin);
    skip();
    return read;
  }

  double named(const std::string& read) {
    if (const auto value = values_.find(read); value != values_.end()) {
      used_.insert(read);
      return value->second;
    }
    if (!take("(")) fail("nothing is called " + read);
    const double inside = sum();
    if (!take(")")) fail("a bracket is not closed");
    return applied(read, inside);
  }

  double applied(const std::string& function, double x) const {
    if (function == "sqrt") return std::sqrt(x);
    if (function == "exp") return std::exp(x);
    if (function == "ln") return std::log(x);
    if (function == "sin") return std::sin(x);
    if (function == "cos") return std::cos(x);
    if (function == "tan") return std::tan(x);
    fail("no function is called " + function);
  }

  std::string text_;
  std::map<std::string, double> values_;
  std::set<std::string> used_{};
  std::size_t at_{};
};

}  // namespace holdback::test
