#include "holdback/files/toml_tree.hpp"

#include <fmt/format.h>
#include <toml++/toml.h>

#include <algorithm>

#include "holdback/files/syntax_fault.hpp"
#include "holdback/files/text_file.hpp"

namespace holdback::files {
namespace {

constexpr std::size_t most_syntax_faults = 20;

Position position_of(const toml::source_position& from) {
  return {static_cast<int>(from.line), static_cast<int>(from.column)};
}

Node::Kind kind_of(const toml::node& node) {
  switch (node.type()) {
    case toml::node_type::string:
      return Node::Kind::text;
    case toml::node_type::integer:
    case toml::node_type::floating_point:
      return Node::Kind::number;
    case toml::node_type::boolean:
      return Node::Kind::truth;
    case toml::node_type::array:
      return Node::Kind::list;
    case toml::node_type::table:
      return Node::Kind::table;
    default:
      return Node::Kind::date;
  }
}

std::string written_of(const toml::source_region& region, const std::vector<std::string>& lines) {
  if (region.begin.line == 0 || region.begin.line > lines.size()) return {};
  const std::string& line = lines[region.begin.line - 1];
  const bool one_line = region.end.line == region.begin.line;
  const int last = one_line ? static_cast<int>(region.end.column) : static_cast<int>(length_of(line)) + 1;
  return clipped(slice(line, static_cast<int>(region.begin.column), last) + (one_line ? "" : " …"));
}

std::string text_of(const toml::node& node) {
  if (const auto* text = node.as_string()) return text->get();
  if (const auto* whole = node.as_integer()) return fmt::format("{}", whole->get());
  if (const auto* real = node.as_floating_point()) return fmt::format("{}", real->get());
  return {};
}

bool earlier(const Node& a, const Node& b) {
  return std::pair(a.key_where.line, a.key_where.column) < std::pair(b.key_where.line, b.key_where.column);
}

Node node_of(const toml::node& from, const std::vector<std::string>& lines) {
  Node node;
  node.kind = kind_of(from);
  node.where = position_of(from.source().begin);
  node.written = written_of(from.source(), lines);
  node.text = text_of(from);
  if (const auto* list = from.as_array())
    for (const toml::node& item : *list) node.children.push_back(node_of(item, lines));
  if (const auto* table = from.as_table()) {
    for (const auto& [key, value] : *table) {
      Node child = node_of(value, lines);
      child.key = key.str();
      child.key_where = position_of(key.source().begin);
      node.children.push_back(std::move(child));
    }
    std::sort(node.children.begin(), node.children.end(), earlier);
  }
  return node;
}

std::string joined(const std::vector<std::string>& lines) {
  std::string text;
  for (const std::string& line : lines) text += line + "\n";
  return text;
}

/// Takes the faulty value out of `lines`; false when the line is no `key = value`.
bool repair(std::vector<std::string>& lines, int line) {
  const auto index = static_cast<std::size_t>(line - 1);
  if (line < 1 || index >= lines.size()) return false;
  const std::string key = key_of_line(lines[index]);
  if (key.empty()) return false;
  const bool again = lines[index] == key + " = \"\"";
  lines[index] = again ? "" : key + " = \"\"";
  return true;
}

}  // namespace

Tree parse_toml(std::string_view text, const std::string& file) {
  Tree tree;
  const std::vector<std::string> original = lines_of(text);
  std::vector<std::string> lines = original;
  // Each round either reads the file or takes one faulty line out; the bound also ends rounds that find nothing new.
  for (std::size_t round = 0; round <= 2 * most_syntax_faults; ++round) {
    try {
      const toml::table table = toml::parse(round == 0 ? std::string(text) : joined(lines), std::string_view(file));
      tree.root = node_of(table, original);
      return tree;
    } catch (const toml::parse_error& error) {
      const Position where = position_of(error.source().begin);
      const bool known =
          std::find(tree.faulty_lines.begin(), tree.faulty_lines.end(), where.line) != tree.faulty_lines.end();
      if (!known) tree.problems.push_back(syntax_fault(error.description(), where, original, file));
      tree.faulty_lines.push_back(where.line);
      if (tree.problems.size() >= most_syntax_faults || !repair(lines, where.line)) break;
    }
  }
  tree.whole = false;
  return tree;
}

}  // namespace holdback::files
