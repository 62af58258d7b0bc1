// A read file as plain nodes with positions, whatever syntax it had: a TOML table and a row of a CSV table look the
// same to the readers of the field table.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "holdback/model/problem.hpp"

namespace holdback::files {

struct Node {
  enum class Kind { text, number, truth, date, list, table };
  std::string key{};  // within its table; empty in a list
  Position key_where{};
  Kind kind{Kind::table};
  Position where{};              // of the value; of the header for a table under a header
  std::string written{};         // the value as it stands in the file, on one line
  std::string text{};            // content of a text; digits of a number
  std::vector<Node> children{};  // members of a table or list, in file order

  const Node* child(std::string_view name) const {
    for (const Node& node : children)
      if (node.key == name) return &node;
    return nullptr;
  }
};

}  // namespace holdback::files
