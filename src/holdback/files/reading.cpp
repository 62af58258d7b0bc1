#include "holdback/files/reading.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "holdback/files/suggest.hpp"
#include "holdback/files/text_file.hpp"
#include "holdback/files/value.hpp"

namespace holdback::files {
namespace {

bool has(const std::vector<std::string>& words, const std::string& word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

std::vector<std::string> keys_of(const Section& section) {
  std::vector<std::string> keys;
  for (const FieldInfo* field : section.fields) keys.push_back(field->key);
  return keys;
}

/// "line", when `key` is unknown here but a key of another section.
const Section* home_of(const std::string& key) {
  for (const Section& section : sections())
    if (!section.key.empty() && has(keys_of(section), key)) return &section;
  return nullptr;
}

Note advice_for(const std::string& key, const std::string& near, const Section& section,
                const std::vector<std::string>& known) {
  if (!near.empty()) return {fmt::format("did you mean \"{}\"?", near)};
  if (const Section* home = home_of(key))
    return {fmt::format("\"{}\" belongs in {}", key, home->inline_table ? home->key : header_of(*home))};
  return {fmt::format("keys of {}: {}", section.key.empty() ? "the file" : header_of(section), listed(known))};
}

/// 'web "PET 12"' or '[line]', to begin a sentence with.
std::string subject(const Owner& owner) { return owner.words.empty() ? owner.header : owner.words; }

}  // namespace

void Reading::absent_everywhere(const std::set<std::string>& keys, const std::string& words) {
  absent_.insert(keys.begin(), keys.end());
  if (!words.empty()) absent_words_ = words;
}

std::optional<Value> Reading::value(const FieldInfo& info, const Node& node, const Owner& owner) {
  const Node* child = node.child(info.key);
  if (child == nullptr) {
    if (info.presence == Presence::required && absent_.count(info.key) == 0) missing(info, node, owner);
    if (info.presence != Presence::defaulted) return std::nullopt;
    defaulted(info, owner);
    return default_value(info);
  }
  place(owner.path_of(info.key), child->where, child->written);
  if (info.form == Form::points) return std::nullopt;
  auto read = value_of(info, *child);
  if (const auto* fault = std::get_if<Fault>(&read)) {
    problem(owner.label + info.key, child->where, child->written, fault->what, fault->accepted);
    const bool number = info.form == Form::quantity && info.kind != Quantity::count;
    return number ? std::optional<Value>(std::numeric_limits<double>::quiet_NaN()) : std::nullopt;
  }
  return std::get<Value>(read);
}

void Reading::missing(const FieldInfo& info, const Node& node, const Owner& owner) {
  if (was_meant(owner.path_of(info.key))) return;
  const bool no_table = node.where.line == 0;
  std::string what = no_table ? fmt::format("{} is missing, and its {} is required", owner.header, info.key)
                              : fmt::format("{} has no {}", subject(owner), info.key);
  Note accepted = accepted_by(info);
  if (info.form == Form::text || !info.example.empty()) accepted.text += fmt::format(", such as \"{}\"", info.example);
  problem(owner.label + info.key, node.where, "", {std::move(what)}, std::move(accepted));
}

void Reading::defaulted(const FieldInfo& info, const Owner& owner) {
  const std::string path = owner.path_of(info.key);
  if (absent_.count(info.key) == 0) {
    out_.defaults.push_back({path, owner.words, info.default_text});
  } else if (recorded_.insert(info.key).second) {
    out_.defaults.push_back({path, absent_words_, info.default_text});
  }
}

void Reading::unknown_keys(const Node& node, const Owner& owner, const Section& section,
                           const std::vector<std::string>& others) {
  std::vector<std::string> known = keys_of(section);
  known.insert(known.end(), others.begin(), others.end());
  for (const Node& child : node.children) {
    if (has(known, child.key)) continue;
    const std::string near = nearest(child.key, known);
    if (!near.empty()) out_.meant.insert(owner.path_of(near));
    const std::string where = section.key.empty() ? "a stand file" : header_of(section);
    problem(owner.label + clipped(child.key), child.key_where, child.written,
            {fmt::format("\"{}\" is not a key of {}", clipped(child.key), where)},
            advice_for(child.key, near, section, known));
  }
}

void Reading::fields_of_pad(const std::string& pad, const std::vector<const FieldInfo*>& fields, const Node& node,
                            const Owner& owner) {
  if (pad.empty()) return;  // it could not be read: nothing follows from it
  for (const FieldInfo* info : fields) {
    const Node* child = node.child(info->key);
    if (child != nullptr && !info->only_with.empty() && !has(info->only_with, pad)) {
      problem(owner.label + info->key, child->key_where, child->written,
              {fmt::format("{} belongs to pad = {}, and here pad = \"{}\"", info->key, listed(info->only_with), pad)},
              {"leave the key out, or change pad"});
    }
    if (child == nullptr && has(info->needed_with, pad)) {
      Note accepted = accepted_by(*info);
      accepted.text += fmt::format(", such as \"{}\"", info->example);
      problem(owner.label + info->key, node.where, "",
              {fmt::format("{} has no {}, which pad = \"{}\" needs", subject(owner), info->key, pad)},
              std::move(accepted));
    }
  }
}

void Reading::place(const std::string& path, Position where, const std::string& written) {
  out_.places[path] = FieldPlace{file_, where, written};
}

void Reading::problem(const std::string& field, Position where, const std::string& written, Note what, Note accepted,
                      Severity severity) {
  if (ignored_.count(where.line) != 0) return;
  Problem problem;
  problem.severity = severity;
  problem.what = std::move(what);
  problem.field = field;
  problem.value = written;
  problem.accepted = std::move(accepted);
  problem.file = file_;
  problem.where = where;
  out_.problems.push_back(std::move(problem));
}

}  // namespace holdback::files
