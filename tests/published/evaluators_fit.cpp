// Evaluators of fits: lines and small linear models, plain and robust; curves.
#include <cmath>
#include <sstream>
#include <string>
#include <vector>

#include "holdback/numerics/fit_curve.hpp"
#include "holdback/numerics/robust.hpp"
#include "published/evaluators.hpp"

namespace holdback::published {

using namespace numerics;
using Q = Quantity;

namespace {

/// Numbers with blanks between them.
std::vector<double> series(Arguments& a, const std::string& name) {
  std::istringstream text(a.text(name));
  std::vector<double> values;
  for (std::string word; text >> word;) values.push_back(read_quantity(word, Q::number));
  return values;
}

Design line(Arguments& a) { return line_design(series(a, "x")); }

/// Columns x1, x2, …, behind a column of ones when `constant` is asked for.
Design columns(Arguments& a) {
  std::vector<std::vector<double>> all;
  for (int k = 1; a.has("x" + std::to_string(k)); ++k) all.push_back(series(a, "x" + std::to_string(k)));
  if (a.has("constant")) all.insert(all.begin(), std::vector<double>(all.front().size(), a("constant", Q::number)));
  Design design{all.size(), {}};
  for (std::size_t i = 0; i < all.front().size(); ++i)
    for (const auto& column : all) design.entries.push_back(column.at(i));
  return design;
}

using MakeDesign = Design (*)(Arguments&);
using Solve = LinearFit (*)(const Design&, const std::vector<double>&);

LinearFit plain(const Design& design, const std::vector<double>& y) { return least_squares(design, y); }
LinearFit robust(const Design& design, const std::vector<double>& y) { return huber(design, y); }

/// One number of a fit: coefficient or standard error `number`, counted from zero.
Evaluator part(MakeDesign make, Solve solve, std::vector<double> LinearFit::*member) {
  return {Q::number, [=](Arguments& a) {
            const Design design = make(a);
            const LinearFit fit = solve(design, series(a, "y"));
            return (fit.*member).at(static_cast<std::size_t>(a("number", Q::count)));
          }};
}

Evaluator part(MakeDesign make, Solve solve, double LinearFit::*member) {
  return {Q::number, [=](Arguments& a) {
            const Design design = make(a);
            return solve(design, series(a, "y")).*member;
          }};
}

/// The end of the 95 % interval of the slope of a line.
Evaluator slope_end(double side) {
  return {Q::number, [side](Arguments& a) {
            const LinearFit fit = least_squares(line(a), series(a, "y"));
            return fit.coefficients[1] + side * half_width(fit.standard_errors[1], fit.freedom);
          }};
}

using RobustLine = Line (*)(const std::vector<double>&, const std::vector<double>&);
Evaluator part(RobustLine find, double Line::*member) {
  return {Q::number, [=](Arguments& a) {
            const auto x = series(a, "x");
            return find(x, series(a, "y")).*member;
          }};
}

CurveFit curve(Arguments& a) {
  const std::string name = a.text("curve");
  CurveModel model = [](double x, const std::vector<double>& b) { return b[0] * std::pow(x, b[1]); };
  if (name == "saturation")
    model = [](double x, const std::vector<double>& b) { return b[0] * (1 - std::exp(-b[1] * x)); };
  else if (name != "power")
    throw CaseFault("'" + name + "' is no curve");
  const auto x = series(a, "x");
  const auto y = series(a, "y");
  return fit_curve(model, x, y, series(a, "start"));
}

Evaluator curve_part(double CurveFit::*member) {
  return {Q::number, [=](Arguments& a) { return curve(a).*member; }};
}

Evaluator curve_part(std::vector<double> CurveFit::*member) {
  return {Q::number, [=](Arguments& a) {
            const CurveFit fit = curve(a);
            return (fit.*member).at(static_cast<std::size_t>(a("number", Q::count)));
          }};
}

}  // namespace

Evaluators fit_evaluators() {
  return {
      {"line.coefficient", part(line, plain, &LinearFit::coefficients)},
      {"line.error", part(line, plain, &LinearFit::standard_errors)},
      {"line.deviation", part(line, plain, &LinearFit::deviation)},
      {"line.determination", part(line, plain, &LinearFit::determination)},
      {"line.slope_from", slope_end(-1)},
      {"line.slope_to", slope_end(1)},
      {"columns.coefficient", part(columns, plain, &LinearFit::coefficients)},
      {"columns.error", part(columns, plain, &LinearFit::standard_errors)},
      {"columns.deviation", part(columns, plain, &LinearFit::deviation)},
      {"columns.determination", part(columns, plain, &LinearFit::determination)},
      {"huber_line.coefficient", part(line, robust, &LinearFit::coefficients)},
      {"huber_line.error", part(line, robust, &LinearFit::standard_errors)},
      {"huber_line.scale", part(line, robust, &LinearFit::deviation)},
      {"huber_line.weight", part(line, robust, &LinearFit::weights)},
      {"huber_columns.coefficient", part(columns, robust, &LinearFit::coefficients)},
      {"huber_columns.error", part(columns, robust, &LinearFit::standard_errors)},
      {"theil_sen.slope", part(theil_sen, &Line::slope)},
      {"theil_sen.intercept", part(theil_sen, &Line::intercept)},
      {"repeated_medians.slope", part(repeated_medians, &Line::slope)},
      {"repeated_medians.intercept", part(repeated_medians, &Line::intercept)},
      {"student_quantile",
       {Q::number, [](Arguments& a) { return student_quantile(a("p", Q::number), a("freedom", Q::number)); }}},
      {"curve.constant", curve_part(&CurveFit::constants)},
      {"curve.error", curve_part(&CurveFit::standard_errors)},
      {"curve.residual_squares", curve_part(&CurveFit::residual_squares)},
      {"curve.deviation", curve_part(&CurveFit::deviation)},
  };
}

}  // namespace holdback::published
