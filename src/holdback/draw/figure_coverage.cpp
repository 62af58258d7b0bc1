// What is in hand for every job of the mix.
#include <fmt/format.h>

#include <algorithm>
#include <numeric>
#include <optional>

#include "holdback/draw/chart_layout.hpp"
#include "holdback/draw/figure_parts.hpp"
#include "holdback/draw/figures.hpp"

namespace holdback::draw {

namespace {

constexpr std::size_t jobs_in_words = 60;
constexpr double row = 5.2;   // [mm]
constexpr double names = 46;  // for the jobs at the left
constexpr double column = 16;
constexpr double size = 2.4;        // of the numbers
constexpr double bold_size = 2.75;  // as wide as bold letters of that size

struct Cell {
  double margin{};
  State state{};
};

struct Heading {
  std::vector<std::string> lines{};
  bool strong{};
};

Weight weight_of(const Heading& heading) { return heading.strong ? Weight::bold : Weight::normal; }

/// What the figure shows: jobs down, fits or limits across. A cell that does not apply is absent.
struct Matrix {
  std::string across{};  // what the columns are
  std::vector<std::string> jobs{};
  std::vector<Heading> headings{};
  std::vector<std::vector<std::optional<Cell>>> cells{};  // a row a job
  std::vector<Footnote> notes{};
};

std::string counted(std::size_t count, const std::string& word) {
  return fmt::format("{} {}{}", count, word, count == 1 ? "" : "s");
}

/// Of so many, the ones with the least in hand, in their own order.
template <typename Margin>
std::vector<std::size_t> least(std::size_t count, std::size_t most, const Margin& margin) {
  std::vector<std::size_t> order(count);
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return margin(a) < margin(b); });
  order.resize(std::min(count, most));
  std::sort(order.begin(), order.end());
  return order;
}

std::vector<std::size_t> jobs_shown(const std::vector<JobFit>& jobs, const MatrixRoom& most, Matrix& matrix) {
  const auto shown = least(jobs.size(), most.jobs, [&](std::size_t i) { return jobs[i].margin; });
  for (const auto i : shown) matrix.jobs.push_back(jobs[i].job);
  if (shown.size() < jobs.size()) {
    matrix.notes.push_back({fmt::format("Shown are the {} with the least in hand; {} more are left out.",
                                        counted(shown.size(), "job"), jobs.size() - shown.size())});
  }
  return shown;
}

const JobFit* job_on(const FitResult& fit, const JobFit& job, std::size_t index) {
  if (index < fit.jobs.size() && fit.jobs[index].job == job.job) return &fit.jobs[index];
  const auto found =
      std::find_if(fit.jobs.begin(), fit.jobs.end(), [&](const JobFit& each) { return each.job == job.job; });
  return found == fit.jobs.end() ? nullptr : &*found;
}

/// The brake in two lines at most, the pairs, the grade.
Heading heading_of(const Fit& fit, bool recommended) {
  Heading heading{broken(fit.brake, column - 1.5, bold_size, 2), recommended};
  const auto pairs = fmt::format("{} pair{}", fit.pairs, fit.pairs == 1 ? "" : "s");
  heading.lines.push_back(fit.brakes > 1 ? fmt::format("{} × {}", fit.brakes, pairs) : pairs);
  heading.lines.push_back(fit.grade);
  return heading;
}

/// Whether a name of the heading was cut, or will be.
bool is_cut(const Heading& heading, const Fit& fit) {
  std::string brake;
  for (std::size_t i = 0; i + 2 < heading.lines.size(); ++i) brake += (i > 0 ? " " : "") + heading.lines[i];
  return brake != fit.brake || fitted(fit.grade, column - 0.8, size, weight_of(heading)) != fit.grade;
}

Matrix of_fits(const Choice& choice, const MatrixRoom& most) {
  Matrix matrix;
  matrix.across = "Least in hand on each fit that was tried, best first";
  std::vector<const FitResult*> fits;
  std::size_t with_jobs = 0;
  for (const auto& fit : choice.all) {
    if (fit.jobs.empty()) continue;
    if (++with_jobs <= most.columns) fits.push_back(&fit);
  }
  const auto& jobs = choice.recommended && !choice.recommended->jobs.empty() ? choice.recommended->jobs : fits[0]->jobs;
  const auto shown = jobs_shown(jobs, most, matrix);
  for (const auto* fit : fits) {
    matrix.headings.push_back(heading_of(fit->fit, choice.recommended && fit->fit == choice.recommended->fit));
    if (is_cut(matrix.headings.back(), fit->fit))
      matrix.notes.push_back({fmt::format("Column {}: {}.", matrix.headings.size(), fit_text(fit->fit))});
  }
  for (const auto i : shown) {
    auto& cells = matrix.cells.emplace_back();
    for (const auto* fit : fits) {
      const auto* job = job_on(*fit, jobs[i], i);
      cells.push_back(job == nullptr ? std::optional<Cell>{} : Cell{job->margin, job->state});
    }
  }
  if (with_jobs > fits.size()) {
    matrix.notes.push_back({fmt::format("Shown are the best {}; {} more are left out.", counted(fits.size(), "fit"),
                                        with_jobs - fits.size())});
  }
  const bool any = std::any_of(matrix.headings.begin(), matrix.headings.end(),
                               [](const Heading& heading) { return heading.strong; });
  if (any) matrix.notes.push_back({"The recommended fit stands in bold."});
  return matrix;
}

/// The limits that come closest for any of the jobs, in their usual order.
std::vector<LimitId> limits_shown(const std::vector<JobFit>& jobs, const MatrixRoom& most, Matrix& matrix) {
  std::vector<LimitId> ids;
  for (int i = 0; i < limit_count; ++i) {
    const auto id = static_cast<LimitId>(i);
    const bool any = std::any_of(jobs.begin(), jobs.end(),
                                 [id](const JobFit& job) { return find_limit(job.limits, id) != nullptr; });
    if (any) ids.push_back(id);
  }
  const auto margin = [&](std::size_t i) {
    double lowest = margin_cap;
    for (const auto& job : jobs) {
      if (const auto* limit = find_limit(job.limits, ids[i])) lowest = std::min(lowest, limit->margin);
    }
    return lowest;
  };
  std::vector<LimitId> shown;
  for (const auto i : least(ids.size(), most.columns, margin)) shown.push_back(ids[i]);
  if (shown.size() < ids.size()) {
    matrix.notes.push_back({fmt::format("Shown are the {} with the least in hand; {} more are left out.",
                                        counted(shown.size(), "limit"), ids.size() - shown.size())});
  }
  return shown;
}

Matrix of_limits(const FitResult& fit, const MatrixRoom& most) {
  Matrix matrix;
  matrix.across = "In hand, limit by limit";
  const auto shown = jobs_shown(fit.jobs, most, matrix);
  const auto limits = limits_shown(fit.jobs, most, matrix);
  for (const auto id : limits) matrix.headings.push_back({broken(info(id).name, column - 0.8, size, 4), false});
  for (const auto i : shown) {
    auto& cells = matrix.cells.emplace_back();
    for (const auto id : limits) {
      const auto* limit = find_limit(fit.jobs[i].limits, id);
      cells.push_back(limit == nullptr ? std::optional<Cell>{} : Cell{limit->margin, limit->state});
    }
  }
  return matrix;
}

Matrix matrix_of(const Choice& choice, const MatrixRoom& most) {
  const bool fits =
      std::any_of(choice.all.begin(), choice.all.end(), [](const FitResult& fit) { return !fit.jobs.empty(); });
  if (fits) return of_fits(choice, most);
  return choice.recommended ? of_limits(*choice.recommended, most) : Matrix{};
}

void write(Scene& scene, Point at, const std::string& text, MarkRole role, Anchor anchor, Weight weight) {
  add(scene, Label{at, text, anchor, size, weight, 0}, {role});
}

void draw_headings(Scene& scene, const Matrix& matrix, const Box& room, double bottom) {
  for (std::size_t i = 0; i < matrix.headings.size(); ++i) {
    const auto& heading = matrix.headings[i];
    const double middle = room.left + names + (static_cast<double>(i) + 0.5) * column;
    double y = bottom - 1.4 - 3 * static_cast<double>(heading.lines.size() - 1);
    const auto weight = weight_of(heading);
    for (const auto& line : heading.lines) {
      write(scene, {middle, y}, fitted(line, column - 0.8, size, weight), MarkRole::text, Anchor::middle, weight);
      y += 3;
    }
  }
}

void draw_cell(Scene& scene, const Box& box, const std::optional<Cell>& cell) {
  const double middle = (box.top + box.bottom) / 2;
  const double base = middle + measure::drop * size;
  if (!cell) {
    write(scene, {box.right - 2, base}, "–", MarkRole::muted, Anchor::end, Weight::normal);
    return;
  }
  add(scene, Rectangle{{box.left + 0.2, box.top + 0.2, box.right - 0.2, box.bottom - 0.2}, true},
      {role_of(cell->state)});
  draw_state(scene, {box.left + 1.7, middle}, cell->state);
  const auto weight = cell->state == State::fails ? Weight::bold : Weight::normal;
  const auto text = fitted(margin_text(cell->margin), box.right - box.left - 3.4, size, weight);
  write(scene, {box.right - 0.7, base}, text, MarkRole::text, Anchor::end, weight);
}

void draw_rows(Scene& scene, const Matrix& matrix, const Box& room, double top) {
  for (std::size_t i = 0; i < matrix.jobs.size(); ++i) {
    const double y = top + row * static_cast<double>(i);
    const double base = y + row / 2 + measure::drop * size;
    write(scene, {room.left, base}, fitted(matrix.jobs[i], names - 2, size), MarkRole::text, Anchor::start,
          Weight::normal);
    for (std::size_t k = 0; k < matrix.cells[i].size(); ++k) {
      const double left = room.left + names + column * static_cast<double>(k);
      draw_cell(scene, {left, y, left + column, y + row}, matrix.cells[i][k]);
    }
  }
}

/// The three states with their words.
void draw_key(Scene& scene, Point at) {
  const std::pair<State, std::string> words[] = {
      {State::holds, "holds"}, {State::tight, "tight: kept, inside the reserve"}, {State::fails, "fails"}};
  for (const auto& [state, text] : words) {
    draw_state(scene, {at.x + 1, at.y}, state);
    write(scene, {at.x + 3.2, at.y + measure::drop * size}, text, MarkRole::text, Anchor::start, Weight::normal);
    at.x += text_width(text, size) + 10;
  }
}

std::string in_words(const Choice& choice) {
  if (!choice.recommended) return "No fit to choose from.";
  const auto& fit = *choice.recommended;
  std::string out = fmt::format("{} covers {} of {}, {} of them tight.", fit_text(fit.fit), fit.covered,
                                counted(fit.jobs.size(), "job"), fit.tight);
  for (std::size_t i = 0; i < std::min(fit.jobs.size(), jobs_in_words); ++i) {
    const auto& job = fit.jobs[i];
    out += fmt::format(" {}: {} in hand, {}, {}.", job.job, margin_text(job.margin), info(job.binding).name,
                       key_of(job.state));
  }
  return out;
}

std::string under_of(const Choice& choice) {
  std::string out = choice.title;
  if (choice.recommended) {
    const auto& fit = *choice.recommended;
    out += (out.empty() ? "" : " · ") + fmt::format("{}: covers {} of {}, {} of them tight", fit_text(fit.fit),
                                                    fit.covered, counted(fit.jobs.size(), "job"), fit.tight);
  }
  return out;
}

}  // namespace

Scene coverage_figure(const Choice& choice, const MatrixRoom& most) {
  const auto matrix = matrix_of(choice, most);
  double lines = 0;
  for (const auto& heading : matrix.headings) lines = std::max(lines, static_cast<double>(heading.lines.size()));
  const double head = 8 + 3 * lines;
  const double height = head + row * static_cast<double>(matrix.jobs.size()) + 7;
  const double width = std::max(16 + names + column * static_cast<double>(matrix.headings.size()), 180.0);
  auto out = page("Coverage of the mix", under_of(choice), height, matrix.notes, width);
  auto& scene = out.scene;
  const auto& room = out.room;
  add(scene, Label{{room.left, room.top + 3.5}, matrix.across, Anchor::start, measure::heading, Weight::bold, 0},
      {MarkRole::text});
  const double top = room.top + head;
  const double right = room.left + names + column * static_cast<double>(matrix.headings.size());
  draw_headings(scene, matrix, room, top);
  draw_rows(scene, matrix, room, top);
  add(scene, Segment{{room.left, top}, {right, top}}, {MarkRole::axis});
  const double bottom = top + row * static_cast<double>(matrix.jobs.size());
  add(scene, Segment{{room.left, bottom}, {right, bottom}}, {MarkRole::axis});
  draw_key(scene, {room.left, bottom + 4});
  scene.description = in_words(choice);
  return scene;
}

}  // namespace holdback::draw
