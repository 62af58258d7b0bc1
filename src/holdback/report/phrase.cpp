#include "holdback/report/phrase.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace holdback::report {

std::string in_hand(double margin) {
  const double percent = 100 * (margin - 1);
  if (percent >= 900) return ">+900 %";
  // Rounded towards what is worse, so that a limit that is not kept never reads as +0 %.
  const double shown = std::floor(percent + 1e-9);
  return fmt::format("{}{:.0f} %", shown < 0 ? "−" : "+", std::abs(shown));
}

std::string shown(double si, Quantity kind, units::System system) {
  return kept_together(units::show(si, kind, system));
}

std::string rounded(double si, Quantity kind, units::System system) {
  const double number = units::in_display_unit(si, kind, system);
  if (std::abs(number) < 1000) return shown(si, kind, system);
  const double step = std::pow(10, std::floor(std::log10(std::abs(number))) - 2);
  std::string digits = fmt::format("{:.0f}", std::round(number / step) * step);
  for (auto at = std::ssize(digits) - 3; at > (number < 0 ? 1 : 0); at -= 3)
    digits.insert(static_cast<std::size_t>(at), " ");
  const auto unit = units::unit_of(kind, system);
  return kept_together(digits + (unit.empty() ? "" : " " + unit));
}

std::string slack_of(double slack, units::System system) {
  constexpr double long_slack = 10;  // [m]
  return shown(slack, slack < long_slack ? Quantity::short_length : Quantity::web_length, system);
}

std::string filled(const Note& note, units::System system) {
  std::string text = units::fill(note, system);
  for (const auto& amount : note.amounts) {
    const auto loose = units::show(amount, system);
    const auto tight = kept_together(loose);
    for (auto at = text.find(loose); at != std::string::npos; at = text.find(loose, at + tight.size())) {
      text.replace(at, loose.size(), tight);
    }
  }
  return text;
}

std::string counted(int count, std::string_view word) {
  return fmt::format("{} {}{}", count, word, count == 1 ? "" : "s");
}

std::string named(std::string_view name) { return fmt::format("“{}”", name); }

std::string names(const std::vector<std::string>& names) {
  constexpr std::size_t most = 5;
  const auto shown_names = names.size() > most + 1 ? most : names.size();
  std::string out;
  for (std::size_t i = 0; i < shown_names; ++i) out += (i > 0 ? ", " : "") + named(names[i]);
  if (names.size() > shown_names) out += fmt::format(" and {} more", names.size() - shown_names);
  return out;
}

std::string words_of(const Fit& fit) {
  return fmt::format("{} × {}, {}{}, grade {}", fit.brakes, fit.brake, counted(fit.pairs, "pair"),
                     fit.brakes > 1 ? " each" : "", fit.grade);
}

std::string at_diameter(double diameter, units::System system) {
  const int digits = system == units::System::si ? 2 : 3;  // whole millimetres, tenths of an inch
  return diameter > 0 ? kept_together("at Ø " + units::show(diameter, Quantity::short_length, system, digits))
                      : std::string{};
}

std::string words_of(const Limit& limit, units::System system) {
  const auto& about = info(limit.id);
  const auto where = at_diameter(limit.diameter, system);
  return fmt::format("{} {} against at {} {}{}{}", about.name, shown(limit.value, about.kind, system),
                     about.sense == Sense::at_most ? "most" : "least", shown(limit.bound, about.kind, system),
                     where.empty() ? "" : " ", where);
}

const Limit* find(const std::vector<Limit>& limits, LimitId id) {
  const auto found = std::find_if(limits.begin(), limits.end(), [id](const Limit& limit) { return limit.id == id; });
  return found == limits.end() ? nullptr : &*found;
}

draw::Ink ink_of(State state) {
  constexpr std::array<draw::Ink, 3> inks{draw::Ink::good, draw::Ink::warning, draw::Ink::bad};
  return inks[static_cast<std::size_t>(state)];
}

Cell cell_of(State state) { return {std::string(key_of(state)), ink_of(state)}; }

void notes(Sheet& sheet, const std::vector<Note>& notes) {
  for (const auto& note : notes) {
    sheet.paragraph("– " + filled(note, sheet.style().system), draw::Ink::plain, 2, true);
  }
}

namespace {

/// Defaults of fields of one name with one value, told together: "friction_band 20 % (3 grades)".
struct DefaultGroup {
  std::string field;
  std::string text;
  std::vector<std::string> owners;
};

std::string last_part(const std::string& path) { return path.substr(path.find_last_of('.') + 1); }

std::string kind_of(const std::string& owner) { return owner.substr(0, owner.find(' ')); }

std::vector<DefaultGroup> grouped(const std::vector<DefaultUsed>& defaults) {
  std::vector<DefaultGroup> groups;
  for (const auto& used : defaults) {
    const auto field = used.owner.empty() ? used.field : last_part(used.field);
    const auto same = std::find_if(groups.begin(), groups.end(), [&](const DefaultGroup& group) {
      return group.field == field && group.text == used.text && !used.owner.empty() && !group.owners.empty() &&
             kind_of(group.owners.front()) == kind_of(used.owner);
    });
    auto& group = same == groups.end() ? groups.emplace_back(DefaultGroup{field, used.text, {}}) : *same;
    if (!used.owner.empty()) group.owners.push_back(used.owner);
  }
  return groups;
}

std::string words_of(const DefaultGroup& group) {
  std::string out = group.field + " " + group.text;
  if (group.owners.size() == 1) out += " (" + group.owners.front() + ")";
  if (group.owners.size() > 1) out += fmt::format(" ({} {}s)", group.owners.size(), kind_of(group.owners.front()));
  return out;
}

}  // namespace

void closing(Sheet& sheet, const std::vector<DefaultUsed>& defaults, const std::vector<Note>& assumptions,
             const std::vector<Note>& cautions) {
  if (!assumptions.empty() || !defaults.empty()) sheet.section("Assumptions and defaults");
  notes(sheet, assumptions);
  std::string list;
  for (const auto& group : grouped(defaults)) list += (list.empty() ? "" : " · ") + words_of(group);
  if (!list.empty()) sheet.paragraph("– not in the file, so taken: " + list, draw::Ink::plain, 2, true);
  if (!cautions.empty()) sheet.section("Cautions");
  notes(sheet, cautions);
}

}  // namespace holdback::report
