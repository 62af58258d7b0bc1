#include "holdback/files/patch_stand.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

#include "holdback/files/field_table.hpp"
#include "holdback/files/text_file.hpp"
#include "holdback/files/toml_tree.hpp"
#include "holdback/units/units.hpp"

namespace holdback::files {
namespace {

constexpr int digits = 4;

const Node* named(const Node* list, const std::string& name) {
  if (list == nullptr) return nullptr;
  for (const Node& each : list->children) {
    const Node* own = each.child("name");
    if (own != nullptr && own->text == name) return &each;
  }
  return nullptr;
}

const FieldInfo* field_of(const BrakeValue& value) {
  const auto fields = value.grade.empty() ? infos(brake_fields()) : infos(grade_fields());
  for (const FieldInfo* field : fields)
    if (field->key == value.key) return field;
  return nullptr;
}

/// A stretch of the text [bytes].
struct Stretch {
  std::size_t from{};
  std::size_t to{};
};

/// Byte at a position; lines and columns count from one, columns in characters.
std::optional<std::size_t> byte_at(std::string_view text, Position where) {
  std::size_t at = 0;
  for (int line = 1; line < where.line; ++line) {
    at = text.find('\n', at);
    if (at == std::string_view::npos) return std::nullopt;
    ++at;
  }
  for (int column = 1; column < where.column && at < text.size(); ++column) {
    const std::size_t size = character_size(text, at);
    if (size == 0) return std::nullopt;
    at += size;
  }
  return at;
}

/// Where a text in quotes that begins at `at` ends.
std::size_t end_of_quoted(std::string_view text, std::size_t at) {
  const char quote = text[at];
  const std::string three(3, quote);
  const bool long_form = text.substr(at, 3) == three;
  for (std::size_t i = at + (long_form ? 3 : 1); i < text.size(); ++i) {
    if (quote == '"' && text[i] == '\\') {
      ++i;
    } else if (long_form ? text.substr(i, 3) == three : text[i] == quote) {
      return i + (long_form ? 3 : 1);
    }
  }
  return text.size();
}

/// The value that begins at a position: a text in quotes or a number.
std::optional<Stretch> value_at(std::string_view text, Position where) {
  const auto at = byte_at(text, where);
  if (!at || *at >= text.size()) return std::nullopt;
  const char first = text[*at];
  if (first == '"' || first == '\'') return Stretch{*at, end_of_quoted(text, *at)};
  const std::size_t end = std::min(text.find_first_of(" \t\r\n,}]#", *at), text.size());
  return end > *at ? std::optional<Stretch>(Stretch{*at, end}) : std::nullopt;
}

bool is_us(const std::string& written, Quantity kind) {
  const std::string us = units::unit_of(kind, units::System::us);
  const bool other = us != units::unit_of(kind, units::System::si);
  for (const char* unit : {"psi", "lbf", "degF"})
    if (written.find(unit) != std::string::npos) return true;
  return other && !us.empty() && written.find(us) != std::string::npos;
}

/// The unit system that a table is written in, by the value itself or else by its neighbours.
units::System system_of(const Node& table, const Node* value, Quantity kind) {
  if (value != nullptr) return is_us(value->written, kind) ? units::System::us : units::System::si;
  for (const Node& each : table.children)
    if (is_us(each.written, kind)) return units::System::us;
  return units::System::si;
}

/// The value with four digits as TOML.
std::string written(const BrakeValue& value, const FieldInfo& field, units::System system, bool quoted) {
  if (field.kind == Quantity::number) {
    const std::string number = fmt::format("{:.{}g}", value.value, digits);
    return quoted ? "\"" + number + "\"" : number;
  }
  const auto rounded = units::parse(units::show(value.value, field.kind, system, digits), field.kind);
  const double si = std::holds_alternative<double>(rounded) ? std::get<double>(rounded) : value.value;
  std::string text = units::write(si, field.kind, system);
  for (std::size_t dot = text.find("·"); dot != std::string::npos; dot = text.find("·"))
    text.replace(dot, std::string("·").size(), "*");  // as the examples of the file format write it
  return "\"" + text + "\"";
}

Problem fault(const std::string& file, const BrakeValue& value, const std::string& what) {
  Problem problem;
  problem.file = file;
  problem.field = value.key;
  problem.what = {what};
  problem.accepted = {"a file with a table for the brake and its grade, each with a name; nothing was changed"};
  return problem;
}

std::string in_quotes(const std::string& words, const std::string& name) { return words + " \"" + name + "\""; }

/// Changes one value; a sentence when it cannot.
std::optional<std::string> set(std::string& text, const std::string& file, const BrakeValue& value,
                               std::vector<FileChange>& changes) {
  const Tree tree = parse_toml(text, file);
  const Node* brake = named(tree.root.child(section::brake), value.brake);
  const Node* table =
      brake == nullptr || value.grade.empty() ? brake : named(brake->child(section::grade), value.grade);
  const FieldInfo* field = field_of(value);
  if (!tree.whole || table == nullptr || field == nullptr) return "the table to be changed is not found in the file";
  const Node* there = table->child(value.key);
  const auto system = system_of(*table, there, field->kind);
  const std::string owner =
      in_quotes("brake", value.brake) + (value.grade.empty() ? "" : ", " + in_quotes("grade", value.grade));
  if (there != nullptr) {
    const auto stretch = value_at(text, there->where);
    if (!stretch) return "the value to be changed is not found in the file";
    const std::string after = written(value, *field, system, there->kind == Node::Kind::text);
    const std::string before = text.substr(stretch->from, stretch->to - stretch->from);
    if (before == after) return std::nullopt;
    changes.push_back({owner, value.key, before, after});
    text.replace(stretch->from, stretch->to - stretch->from, after);
    return std::nullopt;
  }
  const auto name = value_at(text, table->child("name")->where);
  const auto head = byte_at(text, table->where);
  if (!name || !head) return "no place for the value is found in the file";
  const std::string after = written(value, *field, system, false);
  changes.push_back({owner, value.key, "", after});
  if (*head < text.size() && text[*head] == '{') {
    text.insert(name->to, ", " + value.key + " = " + after);
    return std::nullopt;
  }
  const std::size_t end = std::min(text.find('\n', name->to), text.size());
  const bool carriage = end > 0 && end < text.size() && text[end - 1] == '\r';
  const std::size_t line = text.rfind('\n', name->from);
  const std::size_t first = line == std::string::npos ? 0 : line + 1;
  const std::string indent = text.substr(first, text.find_first_not_of(" \t", first) - first);
  text.insert(carriage ? end - 1 : end, (carriage ? "\r\n" : "\n") + indent + value.key + " = " + after);
  return std::nullopt;
}

/// Whether the key reads as the value, four digits of it, in the changed file.
bool reads_as(const StandFile& file, const BrakeValue& value) {
  for (const Brake& brake : file.stand.brakes) {
    if (brake.name != value.brake) continue;
    const auto close = [&](double read) { return std::abs(read - value.value) <= 1e-3 * std::abs(value.value) + 1e-9; };
    if (value.key == "threshold_pressure") return close(brake.threshold_pressure);
    if (value.key == "drag") return close(brake.drag);
    for (const Grade& grade : brake.grades) {
      if (grade.name != value.grade) continue;
      if (value.key == "friction") return grade.friction && close(*grade.friction);
      if (value.key == "torque_per_pair") return grade.torque_per_pair && close(*grade.torque_per_pair);
    }
  }
  return false;
}

}  // namespace

std::variant<PatchedStand, Problem> patch_stand(std::string_view text, const std::string& file_name,
                                                const std::vector<BrakeValue>& values) {
  PatchedStand out;
  const std::string mark(text.substr(0, text.size() - without_mark(text).size()));
  out.text = std::string(without_mark(text));
  for (const BrakeValue& value : values)
    if (const auto wrong = set(out.text, file_name, value, out.changes)) return fault(file_name, value, *wrong);
  const StandFile read = read_stand(out.text, file_name);
  for (const BrakeValue& value : values)
    if (has_errors(read.problems) || !reads_as(read, value))
      return fault(file_name, value, "the changed file would not read as meant");
  out.text = mark + out.text;
  return out;
}

}  // namespace holdback::files
