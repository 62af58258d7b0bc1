// What all readers share: one file's table rows put into values, with every problem, place and default written down.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <vector>

#include "holdback/files/field_table.hpp"
#include "holdback/files/node.hpp"
#include "holdback/files/stand_file.hpp"

namespace holdback::files {

/// The thing that a table describes.
struct Owner {
  std::string path{};    // "brake[0]"
  std::string label{};   // what precedes a key in a problem's field: "brake[0]." or "jobs.csv row 7, "
  std::string words{};   // as a person names it: "brake \"D300\""; empty for the single tables
  std::string header{};  // "[[brake]]"; empty for a row of a CSV table

  std::string path_of(const std::string& key) const { return path.empty() ? key : path + "." + key; }
};

class Reading {
 public:
  Reading(StandFile& out, std::string file) : out_(out), file_(std::move(file)) {}

  /// Lines on which nothing more is to be said, because their syntax is already reported.
  void ignore_lines(const std::vector<int>& lines) { ignored_.insert(lines.begin(), lines.end()); }

  /// Keys that every table of this file lacks: their absence is not told for each table, and their defaults are
  /// recorded once, owned by `words`.
  void absent_everywhere(const std::set<std::string>& keys, const std::string& words);

  /// Reads the rows of `fields` from a table. What cannot be read stays NaN, so that it is not judged twice.
  template <class T>
  T table(const std::vector<Field<T>>& fields, const Node& node, const Owner& owner) {
    T value = unknown(fields);
    fill(fields, node, owner, value);
    return value;
  }

  /// Puts the rows of a table into a value that is already known: only the given keys, no defaults.
  template <class T>
  void override_with(const std::vector<Field<T>>& fields, const Node& node, const Owner& owner, T& value) {
    for (const Field<T>& field : fields)
      if (node.child(field.key) != nullptr)
        if (const auto read = this->value(field, node, owner)) field.set(value, *read);
  }

  /// Keys of a table that are neither fields of the section nor in `others`, each with the nearest known key.
  /// To be called before the table is read.
  void unknown_keys(const Node& node, const Owner& owner, const Section& section,
                    const std::vector<std::string>& others);

  /// Fields that mean nothing with this word of `pad`, and fields that it needs. `owner` has that pad.
  void fields_of_pad(const std::string& pad, const std::vector<const FieldInfo*>& fields, const Node& node,
                     const Owner& owner);

  /// True when an unknown key of the table was taken for this one, so that its absence is no news.
  bool was_meant(const std::string& path) const { return out_.meant.count(path) != 0; }

  /// Writes down where a field or a table stands.
  void place(const std::string& path, Position where, const std::string& written);

  void problem(const std::string& field, Position where, const std::string& written, Note what, Note accepted,
               Severity severity = Severity::error);

 private:
  template <class T>
  void fill(const std::vector<Field<T>>& fields, const Node& node, const Owner& owner, T& value) {
    for (const Field<T>& field : fields)
      if (const auto read = this->value(field, node, owner)) field.set(value, *read);
  }

  /// The value to be set, if there is one: read, or taken from the table.
  std::optional<Value> value(const FieldInfo& info, const Node& node, const Owner& owner);
  void missing(const FieldInfo& info, const Node& node, const Owner& owner);
  void defaulted(const FieldInfo& info, const Owner& owner);

  StandFile& out_;
  std::string file_;
  std::set<int> ignored_{};
  std::set<std::string> absent_{};
  std::set<std::string> recorded_{};
  std::string absent_words_{};
};

}  // namespace holdback::files
