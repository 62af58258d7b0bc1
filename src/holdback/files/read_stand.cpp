// A stand file in TOML, table by table.
#include <fmt/format.h>

#include <algorithm>
#include <optional>

#include "holdback/files/cross_check.hpp"
#include "holdback/files/reading.hpp"
#include "holdback/files/resolve.hpp"
#include "holdback/files/stand_file.hpp"
#include "holdback/files/text_file.hpp"
#include "holdback/files/toml_tree.hpp"
#include "holdback/files/value.hpp"

namespace holdback::files {
namespace {

constexpr std::size_t largest_file = 4'000'000;  // bytes

/// 'brake "D300"', or 'brake 2' when it has no name.
std::string words_for(const std::string& kind, const Node& node, std::size_t index) {
  const Node* name = node.child("name");
  const bool named = name != nullptr && name->kind == Node::Kind::text && !name->text.empty();
  return named ? fmt::format("{} \"{}\"", kind, clipped(name->text)) : fmt::format("{} {}", kind, index + 1);
}

Owner owner_in(const Section& section, const Node& node, std::size_t index, const Owner& parent) {
  Owner owner;
  owner.path = parent.path_of(fmt::format("{}[{}]", section.key, index));
  owner.label = owner.path + ".";
  owner.words = section.inline_table ? fmt::format("point {} of the cooling map", index + 1)
                                     : words_for(section.key, node, index);
  if (!parent.words.empty()) owner.words += " of " + parent.words;
  owner.header = header_of(section);
  return owner;
}

std::string article_of(const std::string& noun) { return noun.find_first_of("aeiou") == 0 ? "an" : "a"; }

/// How the tables of a section that may stand several times are written.
Note form_of(const Section& section) {
  if (!section.inline_table) return {header_of(section) + " above each of them"};
  FieldInfo list;
  list.form = Form::points;
  return accepted_by(list);
}

class StandReader {
 public:
  StandReader(StandFile& out, Reading& reading) : out_(out), reading_(reading) {}

  void read(const Node& root) {
    Stand& stand = out_.stand;
    reading_.unknown_keys(root, {}, section_of(""), top_tables());
    reading_.table(head_fields(), root, {});
    stand = single(root, section::stand, stand_fields());
    stand.air = single(root, section::air, air_fields());
    stand.line = single(root, section::line, line_fields());
    stand.limits = single(root, section::limits, limits_fields());
    stand.uncertainty = single(root, section::uncertainty, uncertainty_fields());
    stand.path = single(root, section::path, path_fields());
    if (root.child(section::shaft) != nullptr) read_shaft(root);
    each(root, section::idler, {}, [&](const Node& n, const Owner& o) { read_idler(n, o); });
    each(root, section::web, {}, [&](const Node& n, const Owner& o) { read_web(n, o); });
    each(root, section::roll, {}, [&](const Node& n, const Owner& o) { read_roll(n, o); });
    each(root, section::job, {}, [&](const Node& n, const Owner& o) { read_job(n, o); });
    each(root, section::brake, {}, [&](const Node& n, const Owner& o) { read_brake(n, o); });
    stand.control = single(root, section::control, control_fields());
    stand.load_cell = if_there(root, section::load_cell, load_cell_fields());
    stand.dancer = if_there(root, section::dancer, dancer_fields());
    stand.diameter_sensor = if_there(root, section::diameter_sensor, diameter_sensor_fields());
    each(root, section::scenario, {}, [&](const Node& n, const Owner& o) { read_scenario(n, o); });
  }

 private:
  static std::vector<std::string> top_tables() {
    std::vector<std::string> keys;
    for (const Section& section : sections())
      if (section.parent.empty() && !section.key.empty()) keys.push_back(section.key);
    return keys;
  }

  template <class T>
  T single(const Node& root, const std::string& key, const std::vector<Field<T>>& fields) {
    const Section& section = section_of(key);
    const Owner owner{key, key + ".", "", header_of(section)};
    const Node* node = root.child(key);
    if (node != nullptr && node->kind == Node::Kind::list && node->children.size() == 1) {
      reading_.problem(key, node->where, "", {fmt::format("there is one {}, and it takes single brackets", key)},
                       {owner.header});
      node = &node->children.front();
    }
    if (node != nullptr && node->kind != Node::Kind::table) {
      reading_.problem(key, node->where, node->written,
                       {fmt::format("{} is a table; here stands {}", key, found_in(*node))}, {owner.header});
      return unknown(fields);
    }
    const Node absent;
    if (node == nullptr) node = &absent;
    if (node != &absent) reading_.place(owner.path, node->where, "");
    reading_.unknown_keys(*node, owner, section, inner_tables(section));
    return reading_.table(fields, *node, owner);
  }

  /// A single table that says by being there that the stand has such a thing.
  template <class T>
  std::optional<T> if_there(const Node& root, const std::string& key, const std::vector<Field<T>>& fields) {
    if (root.child(key) == nullptr) return std::nullopt;
    return single(root, key, fields);
  }

  /// Keys of the tables that stand inside a section under headers of their own.
  static std::vector<std::string> inner_tables(const Section& section) {
    std::vector<std::string> keys;
    for (const Section& inner : sections())
      if (!inner.parent.empty() && inner.parent == section.key && !inner.inline_table) keys.push_back(inner.key);
    return keys;
  }

  /// Calls `read` for each table of a section that may stand several times.
  template <class Read>
  void each(const Node& parent, const std::string& key, const Owner& parent_owner, Read read) {
    const Section& section = section_of(key);
    const Node* list = parent.child(key);
    if (list == nullptr) return;
    const std::string field = parent_owner.path_of(key);
    if (list->kind == Node::Kind::table) {
      reading_.problem(
          field, list->where, section.inline_table ? list->written : "",
          {section.inline_table
               ? fmt::format("{} takes a list of tables, and this is one alone", key)
               : fmt::format("{} {} is one of several, and its header takes double brackets", article_of(key), key)},
          form_of(section));
      return read_entry(*list, section, 0, parent_owner, read);
    }
    if (list->kind != Node::Kind::list) {
      reading_.problem(field, list->where, list->written,
                       {fmt::format("{} takes tables; here stands {}", key, found_in(*list))}, form_of(section));
      return;
    }
    if (list->children.size() > section.most)
      reading_.problem(field, list->where, "",
                       {fmt::format("there are {} {} tables, too many to read", list->children.size(), key)},
                       {fmt::format("at most {}", section.most)});
    for (std::size_t i = 0; i < std::min(section.most, list->children.size()); ++i)
      read_entry(list->children[i], section, i, parent_owner, read);
  }

  template <class Read>
  void read_entry(const Node& node, const Section& section, std::size_t index, const Owner& parent, Read read) {
    const Owner owner = owner_in(section, node, index, parent);
    if (node.kind != Node::Kind::table) {
      reading_.problem(owner.path, node.where, node.written,
                       {fmt::format("{} takes tables; here stands {}", section.key, found_in(node))}, form_of(section));
      return;
    }
    reading_.place(owner.path, node.where, "");
    read(node, owner);
  }

  void read_web(const Node& node, const Owner& owner) {
    reading_.unknown_keys(node, owner, section_of(section::web), {section::ply});
    WebDraft draft = reading_.table(web_fields(), node, owner);
    each(node, section::ply, owner, [&](const Node& n, const Owner& o) {
      reading_.unknown_keys(n, o, section_of(section::ply), {});
      draft.plies.push_back(reading_.table(ply_fields(), n, o));
    });
    out_.stand.webs.push_back(resolved(draft, node, owner, reading_));
  }

  void read_idler(const Node& node, const Owner& owner) {
    reading_.unknown_keys(node, owner, section_of(section::idler), {});
    out_.stand.idlers.push_back(reading_.table(idler_fields(), node, owner));
  }

  void read_shaft(const Node& root) {
    Shaft shaft = single(root, section::shaft, shaft_fields());
    const Node* node = root.child(section::shaft);
    if (node->kind == Node::Kind::list && node->children.size() == 1) node = &node->children.front();
    const Owner owner{section::shaft, section::shaft + ".", "", header_of(section_of(section::shaft))};
    if (node->kind == Node::Kind::table)
      each(*node, section::shaft_section, owner, [&](const Node& n, const Owner& o) {
        reading_.unknown_keys(n, o, section_of(section::shaft_section), {});
        shaft.sections.push_back(reading_.table(shaft_section_fields(), n, o));
      });
    out_.stand.shaft = shaft;
  }

  void read_roll(const Node& node, const Owner& owner) {
    reading_.unknown_keys(node, owner, section_of(section::roll), {});
    out_.stand.rolls.push_back(reading_.table(roll_fields(), node, owner));
  }

  void read_job(const Node& node, const Owner& owner) {
    reading_.unknown_keys(node, owner, section_of(section::job), {});
    const JobDraft draft = reading_.table(job_fields(), node, owner);
    out_.stand.jobs.push_back(resolved(draft, out_.stand, node, owner, reading_));
  }

  void read_brake(const Node& node, const Owner& owner) {
    reading_.unknown_keys(node, owner, section_of(section::brake), {section::grade});
    BrakeDraft draft = reading_.table(brake_fields(), node, owner);
    const std::string pad = pad_word(node);
    reading_.fields_of_pad(pad, infos(brake_fields()), node, owner);
    each(node, section::cooling, owner, [&](const Node& n, const Owner& o) {
      reading_.unknown_keys(n, o, section_of(section::cooling), {});
      draft.cooling.push_back(reading_.table(cooling_fields(), n, o));
    });
    if (const Node* cooling = node.child(section::cooling);
        cooling != nullptr && cooling->kind == Node::Kind::list && cooling->children.empty())
      reading_.problem(owner.label + section::cooling, cooling->where, cooling->written, {"the cooling map is empty"},
                       {"at least one point"});
    each(node, section::grade, owner, [&](const Node& n, const Owner& o) {
      reading_.unknown_keys(n, o, section_of(section::grade), {});
      draft.grades.push_back(reading_.table(grade_fields(), n, o));
      reading_.fields_of_pad(pad, infos(grade_fields()), n, o);
    });
    out_.stand.brakes.push_back(resolved(draft));
  }

  void read_scenario(const Node& node, const Owner& owner) {
    reading_.unknown_keys(node, owner, section_of(section::scenario), {section::event});
    Scenario scenario = reading_.table(scenario_fields(), node, owner);
    each(node, section::event, owner, [&](const Node& n, const Owner& o) {
      reading_.unknown_keys(n, o, section_of(section::event), {});
      scenario.events.push_back(reading_.table(event_fields(), n, o));
      if (scenario.events.back().kind != EventKind::splice) forget_default(o.path_of("mismatch"));
    });
    out_.stand.scenarios.push_back(scenario);
  }

  /// A default that has no meaning where it was taken is not told. It is the one of the last row that was read.
  void forget_default(const std::string& path) {
    if (!out_.defaults.empty() && out_.defaults.back().field == path) out_.defaults.pop_back();
  }

  /// The word of `pad`; empty when it is absent or wrong, so that nothing is concluded from it.
  static std::string pad_word(const Node& node) {
    const Node* pad = node.child("pad");
    for (const Field<BrakeDraft>& field : brake_fields())
      if (field.key == "pad" && pad != nullptr && std::holds_alternative<Value>(value_of(field, *pad)))
        return pad->text;
    return {};
  }

  StandFile& out_;
  Reading& reading_;
};

}  // namespace

StandFile read_stand(std::string_view text, const std::string& file_name) {
  StandFile out;
  if (auto wrong = unreadable(text, largest_file, "a stand file; holdback example prints one", file_name)) {
    if (text.size() <= largest_file) out.lines[file_name] = lines_of(text);
    out.problems.push_back(std::move(*wrong));
    finish(out);
    return out;
  }
  text = without_mark(text);
  out.lines[file_name] = lines_of(text);
  out.places[""] = FieldPlace{file_name, {}, ""};
  Tree tree = parse_toml(text, file_name);
  out.problems = std::move(tree.problems);
  if (tree.whole) {
    Reading reading(out, file_name);
    reading.ignore_lines(tree.faulty_lines);
    StandReader(out, reading).read(tree.root);
    add_cross_problems(out);
  }
  finish(out);
  return out;
}

}  // namespace holdback::files
