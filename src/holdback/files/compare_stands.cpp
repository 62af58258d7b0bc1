#include "holdback/files/compare_stands.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <utility>

#include "holdback/files/field_table.hpp"
#include "holdback/files/resolve.hpp"

namespace holdback::files {

namespace {

constexpr std::size_t longest_written = 14;  // bytes of a number as the file may have it; a longer one is rounded

/// A thing in one of the two: the place that a default is recorded under.
std::string place_of(const std::string& parent, const std::string& key, std::size_t index) {
  return fmt::format("{}{}{}[{}]", parent, parent.empty() ? "" : ".", key, index);
}

bool same(const Value& a, const Value& b) {
  const auto* x = std::get_if<double>(&a);
  const auto* y = std::get_if<double>(&b);
  if (x == nullptr || y == nullptr) return a == b;
  return *x == *y || std::abs(*x - *y) <= 1e-9 * std::max(std::abs(*x), std::abs(*y));
}

/// The number as a file has it, or rounded to so many digits where that is long.
std::string number_text(double value, Quantity kind, units::System system, int digits) {
  if (!std::isfinite(value)) return units::show(value, kind, system, digits);
  auto written = units::write(value, kind, system);
  return written.size() <= longest_written ? written : units::show(value, kind, system, digits);
}

/// Both values in words that differ.
std::pair<std::string, std::string> texts(const FieldInfo& info, const std::optional<Value>& before,
                                          const std::optional<Value>& after, units::System system) {
  const auto text = [&](const std::optional<Value>& value, int digits) -> std::string {
    if (!value) return {};
    if (const auto* words = std::get_if<std::string>(&*value)) return *words;
    return number_text(std::get<double>(*value), info.kind, system, digits);
  };
  std::pair<std::string, std::string> out;
  for (int digits = 3; digits <= 12; ++digits) {
    out = {text(before, digits), text(after, digits)};
    if (out.first != out.second) break;
  }
  return out;
}

/// One side of a comparison of two tables.
struct Side {
  const std::vector<DefaultUsed>* defaults{};
  std::string place{};  // "brake[0].grade[1]"
};

/// A kind of thing, in both stands.
struct Thing {
  std::string table{};  // "brake.grade"
  std::string owner{};  // "grade \"M\" of brake \"D300\""; empty for the single tables
  Side before{};
  Side after{};
};

class Comparer {
 public:
  Comparer(const Revision& before, const Revision& after, units::System system)
      : before_(before), after_(after), system_(system) {}

  Changes all() {
    const Stand& a = before_.stand;
    const Stand& b = after_.stand;
    single(section::stand, stand_fields(), a, b);
    single(section::air, air_fields(), a.air, b.air);
    single(section::line, line_fields(), a.line, b.line);
    single(section::limits, limits_fields(), a.limits, b.limits);
    single(section::uncertainty, uncertainty_fields(), a.uncertainty, b.uncertainty);
    single(section::path, path_fields(), a.path, b.path);
    named(section::idler, top(), a.idlers, b.idlers,
          [&](const Thing& thing, const Idler& x, const Idler& y) { fields(idler_fields(), thing, x, y); });
    shaft();
    named(section::web, top(), a.webs, b.webs,
          [&](const Thing& thing, const Web& x, const Web& y) { web(thing, x, y); });
    named(section::roll, top(), a.rolls, b.rolls,
          [&](const Thing& thing, const Roll& x, const Roll& y) { fields(roll_fields(), thing, x, y); });
    named(section::job, top(), a.jobs, b.jobs,
          [&](const Thing& thing, const Job& x, const Job& y) { job(thing, x, y); });
    named(section::brake, top(), a.brakes, b.brakes,
          [&](const Thing& thing, const Brake& x, const Brake& y) { brake(thing, x, y); });
    single(section::control, control_fields(), a.control, b.control);
    optional(section::load_cell, load_cell_fields(), a.load_cell, b.load_cell);
    optional(section::dancer, dancer_fields(), a.dancer, b.dancer);
    optional(section::diameter_sensor, diameter_sensor_fields(), a.diameter_sensor, b.diameter_sensor);
    named(section::scenario, top(), a.scenarios, b.scenarios,
          [&](const Thing& thing, const Scenario& x, const Scenario& y) {
            fields(scenario_fields(), thing, x, y);
            listed(section::event, thing, event_fields(), x.events, y.events, "event {}");
          });
    return std::move(changes_);
  }

 private:
  Thing top() const { return {"", "", {&before_.defaults, ""}, {&after_.defaults, ""}}; }

  Thing table(const std::string& key) const { return {key, "", {&before_.defaults, key}, {&after_.defaults, key}}; }

  static std::string joined(const std::string& table, const std::string& key) {
    return table.empty() ? key : table + "." + key;
  }

  void told(ChangeKind kind, const std::string& owner, const std::string& field) {
    changes_.changes.push_back({kind, owner, field, "", ""});
  }

  static std::string marked(std::string text, const Side& side, const std::string& key) {
    const auto path = joined(side.place, key);
    const bool taken = std::any_of(side.defaults->begin(), side.defaults->end(),
                                   [&](const DefaultUsed& used) { return used.field == path; });
    return taken && !text.empty() ? text + " (default)" : text;
  }

  template <class T>
  void fields(const std::vector<Field<T>>& rows, const Thing& thing, const T& before, const T& after) {
    for (const Field<T>& row : rows) {
      const auto x = row.get(before);
      const auto y = row.get(after);
      if (!x && !y) continue;
      if (x && y && same(*x, *y)) continue;
      auto [was, is] = texts(row, x, y, system_);
      changes_.changes.push_back({!x   ? ChangeKind::added
                                  : !y ? ChangeKind::removed
                                       : ChangeKind::changed,
                                  thing.owner, joined(thing.table, row.key),
                                  marked(std::move(was), thing.before, row.key),
                                  marked(std::move(is), thing.after, row.key)});
    }
  }

  template <class T>
  void single(const std::string& key, const std::vector<Field<T>>& rows, const T& before, const T& after) {
    fields(rows, table(key), before, after);
  }

  template <class T>
  void optional(const std::string& key, const std::vector<Field<T>>& rows, const std::optional<T>& before,
                const std::optional<T>& after) {
    if (before && after)
      fields(rows, table(key), *before, *after);
    else if (before || after)
      told(before ? ChangeKind::removed : ChangeKind::added, "", key);
  }

  /// Things that are matched by their names; of several of one name the first with the first, and so on.
  template <class T, class Compare>
  void named(const std::string& key, const Thing& parent, const std::vector<T>& before, const std::vector<T>& after,
             Compare compare) {
    std::vector<bool> matched(after.size());
    const auto owner = [&](const T& thing) {
      return fmt::format("{} \"{}\"{}", key, thing.name, parent.owner.empty() ? "" : " of " + parent.owner);
    };
    for (std::size_t i = 0; i < before.size(); ++i) {
      std::size_t k = 0;
      while (k < after.size() && (matched[k] || after[k].name != before[i].name)) ++k;
      if (k == after.size()) {
        told(ChangeKind::removed, owner(before[i]), joined(parent.table, key));
        continue;
      }
      matched[k] = true;
      compare(Thing{joined(parent.table, key),
                    owner(before[i]),
                    {parent.before.defaults, place_of(parent.before.place, key, i)},
                    {parent.after.defaults, place_of(parent.after.place, key, k)}},
              before[i], after[k]);
    }
    for (std::size_t k = 0; k < after.size(); ++k)
      if (!matched[k]) told(ChangeKind::added, owner(after[k]), joined(parent.table, key));
  }

  /// Things without names, by their places. `words` names one: "point {} of the cooling map".
  template <class T>
  void listed(const std::string& key, const Thing& parent, const std::vector<Field<T>>& rows,
              const std::vector<T>& before, const std::vector<T>& after, const std::string& words) {
    for (std::size_t i = 0; i < std::max(before.size(), after.size()); ++i) {
      auto owner = fmt::format(fmt::runtime(words), i + 1);
      if (!parent.owner.empty()) owner += " of " + parent.owner;
      const Thing thing{joined(parent.table, key),
                        owner,
                        {parent.before.defaults, place_of(parent.before.place, key, i)},
                        {parent.after.defaults, place_of(parent.after.place, key, i)}};
      if (i < before.size() && i < after.size())
        fields(rows, thing, before[i], after[i]);
      else
        told(i < before.size() ? ChangeKind::removed : ChangeKind::added, owner, thing.table);
    }
  }

  void shaft() {
    const auto& a = before_.stand.shaft;
    const auto& b = after_.stand.shaft;
    optional(section::shaft, shaft_fields(), a, b);
    if (a && b)
      listed(section::shaft_section, table(section::shaft), shaft_section_fields(), a->sections, b->sections,
             "section {} of the shaft");
  }

  void web_itself(const Thing& thing, const Web& before, const Web& after) {
    WebDraft x = draft_of(before);
    WebDraft y = draft_of(after);
    if (basis_weight_derived(before) && basis_weight_derived(after))
      x.given_basis_weight = y.given_basis_weight = std::nullopt;
    fields(web_fields(), thing, x, y);
  }

  void web(const Thing& thing, const Web& before, const Web& after) {
    web_itself(thing, before, after);
    listed(section::ply, thing, ply_fields(), before.plies, after.plies, "ply {}");
  }

  /// The job's own width, where it is not the web's.
  static JobDraft draft_of_job(const Job& job, const Stand& stand) {
    JobDraft draft;
    static_cast<Job&>(draft) = job;
    draft.web_name = job.web.name;
    draft.roll_name = job.roll.name;
    const Web* web = called(stand.webs, job.web.name);
    if (web != nullptr && !same(web->width, job.web.width)) draft.width = job.web.width;
    return draft;
  }

  template <class T>
  static const T* called(const std::vector<T>& things, const std::string& name) {
    const auto found = std::find_if(things.begin(), things.end(), [&](const T& thing) { return thing.name == name; });
    return found == things.end() ? nullptr : &*found;
  }

  /// Whether a job of a table brings a web or roll of its own.
  static bool own_web(const Job& job, const Stand& stand) {
    const Web* web = called(stand.webs, job.web.name);
    if (web == nullptr) return true;
    Web wide = *web;
    wide.width = job.web.width;
    return !(wide == job.web);
  }
  static bool own_roll(const Job& job, const Stand& stand) {
    const Roll* roll = called(stand.rolls, job.roll.name);
    return roll == nullptr || !(*roll == job.roll);
  }

  void job(const Thing& thing, const Job& before, const Job& after) {
    const Stand& a = before_.stand;
    const Stand& b = after_.stand;
    fields(job_fields(), thing, draft_of_job(before, a), draft_of_job(after, b));
    const auto own = [&](const std::string& key) {
      Thing out = thing;
      out.table = joined(thing.table, key);
      out.before.place = joined(thing.before.place, key);
      out.after.place = joined(thing.after.place, key);
      return out;
    };
    if (before.web.name == after.web.name && (own_web(before, a) || own_web(after, b))) {
      Web same_width = after.web;  // that is told of the job itself
      same_width.width = before.web.width;
      web_itself(own(section::web), before.web, same_width);
    }
    if (before.roll.name == after.roll.name && (own_roll(before, a) || own_roll(after, b)))
      fields(roll_fields(), own(section::roll), before.roll, after.roll);
  }

  void brake(const Thing& thing, const Brake& before, const Brake& after) {
    BrakeDraft x = draft_of(before);
    BrakeDraft y = draft_of(after);
    if (pad_area_derived(before) && pad_area_derived(after)) x.given_pad_area = y.given_pad_area = std::nullopt;
    fields(brake_fields(), thing, x, y);
    named(section::grade, thing, before.grades, after.grades,
          [&](const Thing& of, const Grade& a, const Grade& b) { fields(grade_fields(), of, a, b); });
    listed(section::cooling, thing, cooling_fields(), before.cooling, after.cooling, "point {} of the cooling map");
  }

  const Revision& before_;
  const Revision& after_;
  units::System system_;
  Changes changes_{};
};

}  // namespace

Changes changes_between(const Revision& before, const Revision& after, units::System system) {
  return Comparer(before, after, system).all();
}

Changes changes_between(const Stand& before, const Stand& after, units::System system) {
  const std::vector<DefaultUsed> none;
  return changes_between(Revision{before, none}, Revision{after, none}, system);
}

}  // namespace holdback::files
