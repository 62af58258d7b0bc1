// Rows of the mix: webs, rolls, jobs.
#include "holdback/files/field_table.hpp"

namespace holdback::files {

using Q = Quantity;

namespace {

std::vector<std::pair<std::string, Material>> materials() {
  return {{"polyester", Material::polyester},
          {"polypropylene", Material::polypropylene},
          {"polyethylene", Material::polyethylene},
          {"cellophane", Material::cellophane},
          {"aluminium foil", Material::aluminium_foil},
          {"paper", Material::paper},
          {"board", Material::board},
          {"laminate", Material::laminate},
          {"other", Material::other}};
}

}  // namespace

const std::vector<Field<WebDraft>>& web_fields() {
  using F = Field<WebDraft>;
  static const std::vector<F> rows{
      F::text("name", &Web::name).required().such_as("PET 12").means("jobs call the web by it"),
      F::word<Material>("material", materials(), &Web::material)
          .or_else("other")
          .means("family, for a recommended tension"),
      F::quantity("width", Q::short_length, &Web::width)
          .from("1 mm")
          .to("20 m")
          .required()
          .such_as("1000 mm")
          .means("across the machine"),
      F::quantity("caliper", Q::caliper, &Web::caliper)
          .from("1 um")
          .to("10 mm")
          .required()
          .such_as("12 um")
          .means("thickness of one layer"),
      F::quantity("basis_weight", Q::basis_weight, &WebDraft::given_basis_weight)
          .from("0.5 g/m2")
          .to("20000 g/m2")
          .such_as("16.8 g/m2")
          .not_to_be_confused_with("density", Q::density)
          .means("mass of an area; this or density is needed"),
      F::quantity("density", Q::density, &Web::density)
          .from("5 kg/m3")
          .to("25000 kg/m3")
          .such_as("1400 kg/m3")
          .not_to_be_confused_with("basis_weight", Q::basis_weight)
          .means("basis weight becomes density × caliper"),
      F::quantity("modulus", Q::modulus, &Web::modulus)
          .from("0.1 MPa")
          .to("1000 GPa")
          .such_as("4.5 GPa")
          .means("along the machine"),
      F::quantity("yield_strength", Q::stress, &Web::yield_strength)
          .from("0.01 MPa")
          .to("5000 MPa")
          .such_as("100 MPa")
          .means("stress that must not be reached"),
      F::quantity("wound_tension", Q::tension_per_width, &Web::wound_tension)
          .above("0 N/m")
          .to("100000 N/m")
          .such_as("150 N/m")
          .means("tension with which the roll was wound"),
      F::quantity("loss", Q::ratio, &Web::loss)
          .from("0 %")
          .to("50 %")
          .or_else("2 %")
          .means(
              "loss tangent along the machine: inner friction that damps the swings of the tension (common practice)"),
  };
  return rows;
}

const std::vector<Field<Ply>>& ply_fields() {
  using F = Field<Ply>;
  static const std::vector<F> rows{
      F::word<Material>("material", materials(), &Ply::material)
          .or_else("other")
          .means("family, for a recommended tension"),
      F::quantity("caliper", Q::caliper, &Ply::caliper)
          .from("0.1 um")
          .to("10 mm")
          .required()
          .such_as("12 um")
          .means("thickness of the layer"),
      F::quantity("basis_weight", Q::basis_weight, &Ply::basis_weight)
          .from("0.1 g/m2")
          .to("20000 g/m2")
          .such_as("80 g/m2")
          .means("mass of an area; a paper's table goes by it"),
      F::quantity("modulus", Q::modulus, &Ply::modulus)
          .from("0.1 MPa")
          .to("1000 GPa")
          .such_as("4.5 GPa")
          .means("along the machine"),
      F::quantity("yield_strength", Q::stress, &Ply::yield_strength)
          .from("0.01 MPa")
          .to("5000 MPa")
          .such_as("100 MPa")
          .means("stress that must not be reached"),
  };
  return rows;
}

const std::vector<Field<Roll>>& roll_fields() {
  using F = Field<Roll>;
  static const std::vector<F> rows{
      F::text("name", &Roll::name).required().such_as("jumbo").means("jobs call the roll by it"),
      F::quantity("core_diameter", Q::short_length, &Roll::core_diameter)
          .from("10 mm")
          .to("5 m")
          .required()
          .such_as("152 mm")
          .means("outside of the core: the roll at its end"),
      F::quantity("full_diameter", Q::short_length, &Roll::full_diameter)
          .from("10 mm")
          .to("5 m")
          .required()
          .such_as("800 mm")
          .means("the roll at its beginning"),
      F::quantity("core_mass", Q::mass, &Roll::core_mass)
          .from("0 kg")
          .to("5000 kg")
          .or_else("0 kg")
          .means("core with chucks or adapters that turn with it"),
      F::quantity("runout", Q::short_length, &Roll::runout)
          .from("0 mm")
          .to("200 mm")
          .or_else("0 mm")
          .means("out-of-round amplitude of the surface"),
      F::count("lobes", &Roll::lobes)
          .from("1")
          .to("12")
          .or_else("1")
          .means("how often a turn the surface comes out: 1 off centre, 2 oval"),
      F::quantity("length", Q::web_length, &Roll::length)
          .above("0 m")
          .to("1000000 m")
          .such_as("12000 m")
          .means("web on the full roll as its label says; a cross-check"),
      F::quantity("mass", Q::mass, &Roll::mass)
          .above("0 kg")
          .to("100000 kg")
          .such_as("650 kg")
          .means("mass of the web as its label says; a cross-check"),
  };
  return rows;
}

const std::vector<Field<JobDraft>>& job_fields() {
  using F = Field<JobDraft>;
  static const std::vector<F> rows{
      F::text("name", &Job::name).required().such_as("slit PET 12").means("answers call the job by it"),
      F::text("web", &JobDraft::web_name).required().such_as("PET 12").means("name of a web"),
      F::text("roll", &JobDraft::roll_name).required().such_as("jumbo").means("name of a roll"),
      F::quantity("speed", Q::speed, &Job::speed)
          .above("0 m/min")
          .to("3000 m/min")
          .required()
          .such_as("300 m/min")
          .means("running speed"),
      F::quantity("tension", Q::force, &Job::tension)
          .above("0 N")
          .to("1000000 N")
          .such_as("180 N")
          .not_to_be_confused_with("tension_per_width", Q::tension_per_width)
          .means("pull of the whole web; without this and tension_per_width a tension is recommended"),
      F::quantity("tension_per_width", Q::tension_per_width, &JobDraft::tension_per_width)
          .above("0 N/m")
          .to("100000 N/m")
          .such_as("180 N/m")
          .not_to_be_confused_with("tension", Q::force)
          .means("pull per width of the web"),
      F::quantity("tension_tolerance", Q::ratio, &Job::tension_tolerance)
          .from("0.1 %")
          .to("90 %")
          .such_as("8 %")
          .means("accepted ± around the setpoint; without it, that of [limits]"),
      F::quantity("ramp_time", Q::duration, &Job::ramp_time)
          .from("0.1 s")
          .to("3600 s")
          .such_as("20 s")
          .means("standstill to the job's speed; without it, at the line's rate"),
      F::quantity("stop_time", Q::duration, &Job::stop_time)
          .from("0.1 s")
          .to("3600 s")
          .such_as("10 s")
          .means("the job's speed to standstill; without it, at the line's rate"),
      F::quantity("emergency_stop_time", Q::duration, &Job::emergency_stop_time)
          .from("0.1 s")
          .to("3600 s")
          .such_as("4 s")
          .means("the same in an emergency; without it, at the line's rate"),
      F::quantity("share", Q::number, &Job::share)
          .from("0")
          .to("1000000")
          .or_else("1")
          .means("weight of the job in the mix by running time"),
      F::quantity("width", Q::short_length, &JobDraft::width)
          .from("1 mm")
          .to("20 m")
          .such_as("600 mm")
          .means("width in this job instead of the web's own"),
  };
  return rows;
}

}  // namespace holdback::files
