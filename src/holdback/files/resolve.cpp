#include "holdback/files/resolve.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "holdback/files/suggest.hpp"
#include "holdback/units/units.hpp"

namespace holdback::files {
namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();

Note names_note(const std::vector<std::string>& names, const std::string& near, const std::string& header) {
  if (names.empty()) return {fmt::format("a {} of that name; the file has none", header)};
  const std::string known = fmt::format("known: {}", listed(names));
  return {near.empty() ? known : fmt::format("did you mean \"{}\"? {}", near, known)};
}

/// The thing of this name, or null with a problem at the job's key `kind`.
template <class Thing>
const Thing* called(const std::string& name, const std::vector<Thing>& things, const std::string& kind,
                    const Node& node, const Owner& owner, Reading& reading) {
  const auto found = std::find_if(things.begin(), things.end(), [&](const Thing& thing) { return thing.name == name; });
  if (found != things.end()) return &*found;
  const Node* written = node.child(kind);
  if (written == nullptr || name.empty()) return nullptr;  // already reported
  std::vector<std::string> names;
  for (const Thing& thing : things) {
    if (thing.name.empty()) return nullptr;  // its name could not be read, and may be this one
    names.push_back(thing.name);
  }
  reading.problem(owner.label + kind, written->where, written->written, {fmt::format("no {} has this name", kind)},
                  names_note(names, nearest(name, names), header_of(section_of(kind))));
  return nullptr;
}

/// The job's tension [N] from its two ways to be written.
std::optional<double> tension_of(const JobDraft& draft, double width, const Node& node, const Owner& owner,
                                 Reading& reading) {
  if (!draft.tension_per_width) return draft.tension;
  const double from_width = *draft.tension_per_width * width;
  if (!draft.tension) return from_width;
  if (std::abs(*draft.tension - from_width) > 0.01 * from_width) {
    const Node* written = node.child("tension");
    reading.problem(
        owner.label + "tension", written->where, written->written,
        {"tension_per_width over the width of {1} makes {0}; tension says {2}",
         {{from_width, Quantity::force}, {width, Quantity::short_length}, {*draft.tension, Quantity::force}}},
        {"one of the two, or two that agree"});
  }
  return draft.tension;
}

bool follows_from_density(const Web& web) {
  return web.density && std::abs(*web.density * web.caliper - web.basis_weight) <= 1e-9 * web.basis_weight;
}

double sector_area(const SectorPad& pad) {
  return pad.angle / 8 * (pad.outer_diameter * pad.outer_diameter - pad.inner_diameter * pad.inner_diameter);
}

Pad pad_of(const BrakeDraft& draft) {
  const auto length = [](const std::optional<double>& given) { return given.value_or(nan); };
  switch (draft.form) {
    case PadForm::sector:
      return SectorPad{length(draft.pad_inner_diameter), length(draft.pad_outer_diameter), length(draft.pad_angle)};
    case PadForm::round:
      return RoundPad{length(draft.pad_diameter), length(draft.pad_centre_diameter)};
    case PadForm::data_sheet:
      break;
  }
  return DataSheetPad{length(draft.torque_pressure), length(draft.effective_diameter)};
}

double face_of(const Pad& pad) {
  if (const auto* sector = std::get_if<SectorPad>(&pad)) return sector_area(*sector);
  if (const auto* round = std::get_if<RoundPad>(&pad))
    return std::numbers::pi / 4 * round->pad_diameter * round->pad_diameter;
  return nan;
}

}  // namespace

Web resolved(const WebDraft& draft, const Node& node, const Owner& owner, Reading& reading) {
  Web web = draft;
  if (draft.given_basis_weight) {
    web.basis_weight = *draft.given_basis_weight;
    return web;
  }
  web.basis_weight = draft.density ? *draft.density * draft.caliper : nan;
  if (!draft.density && !reading.was_meant(owner.path_of("basis_weight")) &&
      !reading.was_meant(owner.path_of("density")))
    reading.problem(owner.label + "basis_weight", node.where, "",
                    {fmt::format("{} has neither basis_weight nor density", owner.words)},
                    {fmt::format("one of them: {}, or {}", units::accepted_examples(Quantity::basis_weight),
                                 units::accepted_examples(Quantity::density))});
  return web;
}

Web overridden(const Web& base, const WebDraft& draft, const Node& row) {
  Web web = draft;
  const bool new_weight = row.child("basis_weight") != nullptr;
  const bool new_density = row.child("density") != nullptr;
  const bool new_caliper = row.child("caliper") != nullptr;
  if (new_weight) {
    web.basis_weight = draft.given_basis_weight.value_or(nan);
    if (!new_density) web.density = std::nullopt;
  } else if (new_density || (new_caliper && follows_from_density(base))) {
    web.basis_weight = *web.density * web.caliper;
  }
  return web;
}

Web web_called(const std::string& name, const Stand& stand, const Node& node, const Owner& owner, Reading& reading) {
  const Web* web = called(name, stand.webs, section::web, node, owner, reading);
  if (web != nullptr) return *web;
  Web nameless = unknown(web_fields());
  nameless.basis_weight = nan;
  return nameless;
}

Roll roll_called(const std::string& name, const Stand& stand, const Node& node, const Owner& owner, Reading& reading) {
  const Roll* roll = called(name, stand.rolls, section::roll, node, owner, reading);
  return roll != nullptr ? *roll : unknown(roll_fields());
}

Job resolved(const JobDraft& draft, const Stand& stand, const Node& node, const Owner& owner, Reading& reading) {
  const Web web = web_called(draft.web_name, stand, node, owner, reading);
  const Roll roll = roll_called(draft.roll_name, stand, node, owner, reading);
  return resolved(draft, web, roll, node, owner, reading);
}

Job resolved(const JobDraft& draft, const Web& web, const Roll& roll, const Node& node, const Owner& owner,
             Reading& reading) {
  Job job = draft;
  job.web = web;
  job.roll = roll;
  if (draft.width) job.web.width = *draft.width;
  job.tension = tension_of(draft, job.web.width, node, owner, reading);
  return job;
}

Brake resolved(const BrakeDraft& draft) {
  Brake brake = draft;
  brake.pad = pad_of(draft);
  brake.piston_area = draft.given_piston_area.value_or(0);
  brake.pad_area = draft.given_pad_area.value_or(face_of(brake.pad));
  return brake;
}

bool basis_weight_derived(const Web& web) { return follows_from_density(web); }

bool pad_area_derived(const Brake& brake) {
  const double face = face_of(brake.pad);
  return std::abs(brake.pad_area - face) <= 1e-9 * face;
}

WebDraft draft_of(const Web& web) {
  WebDraft draft;
  static_cast<Web&>(draft) = web;
  draft.given_basis_weight = web.basis_weight;
  return draft;
}

BrakeDraft draft_of(const Brake& brake) {
  BrakeDraft draft;
  static_cast<Brake&>(draft) = brake;
  if (const auto* sector = std::get_if<SectorPad>(&brake.pad)) {
    draft.form = PadForm::sector;
    draft.pad_inner_diameter = sector->inner_diameter;
    draft.pad_outer_diameter = sector->outer_diameter;
    draft.pad_angle = sector->angle;
  } else if (const auto* round = std::get_if<RoundPad>(&brake.pad)) {
    draft.form = PadForm::round;
    draft.pad_diameter = round->pad_diameter;
    draft.pad_centre_diameter = round->centre_diameter;
  } else {
    const auto& sheet = std::get<DataSheetPad>(brake.pad);
    draft.form = PadForm::data_sheet;
    draft.torque_pressure = sheet.torque_pressure;
    draft.effective_diameter = sheet.effective_diameter;
  }
  if (brake.piston_area > 0) draft.given_piston_area = brake.piston_area;
  draft.given_pad_area = brake.pad_area;
  return draft;
}

}  // namespace holdback::files
