#include "holdback/files/field.hpp"

#include <stdexcept>

#include "holdback/units/units.hpp"

namespace holdback::files {
namespace {

double parse_own(const FieldInfo& info, const std::string& text) {
  const units::Parsed parsed = units::parse(text, info.kind);
  if (const auto* fault = std::get_if<units::Fault>(&parsed))
    throw std::logic_error("field table, " + info.key + ": \"" + text + "\": " + fault->what);
  return std::get<double>(parsed);
}

}  // namespace

void FieldInfo::bound_low(const std::string& text, bool open) { low = Bound{parse_own(*this, text), open, text}; }
void FieldInfo::bound_high(const std::string& text, bool open) { high = Bound{parse_own(*this, text), open, text}; }

Value default_value(const FieldInfo& info) {
  if (info.form == Form::quantity) return parse_own(info, info.default_text);
  return info.default_text;
}

}  // namespace holdback::files
