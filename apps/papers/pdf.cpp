#include "pdf.hpp"

#include <cairo-pdf.h>
#include <fmt/format.h>

#include <algorithm>
#include <memory>
#include <stdexcept>

#include "outline.hpp"
#include "pages.hpp"

namespace holdback::pdf {

namespace {

using papers::Paper;

cairo_status_t append(void* to, const unsigned char* data, unsigned int length) {
  static_cast<std::string*>(to)->append(reinterpret_cast<const char*>(data), length);
  return CAIRO_STATUS_SUCCESS;
}

/// "2026-11-28", or with a time after it, in digits: what Cairo reads as a date.
bool is_date(const std::string& text) {
  constexpr std::string_view pattern = "dddd-dd-ddTdd:dd:dd";
  if (text.size() != 10 && text.size() != pattern.size()) return false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool digit = text[i] >= '0' && text[i] <= '9';
    if (pattern[i] == 'd' ? !digit : text[i] != pattern[i]) return false;
  }
  return true;
}

/// What all papers have in common, or nothing.
std::string common(const std::vector<const Paper*>& papers, std::string Paper::*of) {
  for (const auto* paper : papers) {
    if (paper->*of != papers.front()->*of) return {};
  }
  return papers.front()->*of;
}

std::string title_of(const std::vector<const Paper*>& papers) {
  const auto title = common(papers, &Paper::title);
  return title.empty() ? std::string(name_of(papers.front()->kind)) : title;
}

void set_metadata(cairo_surface_t* surface, const std::vector<const Paper*>& papers, const Options& options) {
  const auto set = [&](cairo_pdf_metadata_t what, const std::string& text) {
    if (!text.empty()) cairo_pdf_surface_set_metadata(surface, what, clean(text).c_str());
  };
  set(CAIRO_PDF_METADATA_TITLE, title_of(papers));
  set(CAIRO_PDF_METADATA_SUBJECT, common(papers, &Paper::subject));
  set(CAIRO_PDF_METADATA_CREATOR, "Holdback");
  set(CAIRO_PDF_METADATA_CREATE_DATE, is_date(options.created) ? options.created : std::string("1970-01-01"));
}

/// Cairo writes the clock where it is given no date: it was given one, which is blotted out here. The document's parts
/// stay where they are.
void remove_date(std::string& bytes) {
  const auto start = bytes.rfind("/CreationDate (");
  if (start == std::string::npos) return;
  const auto end = bytes.find(')', start);
  if (end != std::string::npos)
    std::fill(bytes.begin() + static_cast<long>(start), bytes.begin() + static_cast<long>(end) + 1, ' ');
}

struct Surface {
  explicit Surface(const SheetSize& sheet, std::string& bytes)
      : surface(cairo_pdf_surface_create_for_stream(append, &bytes, sheet.width, sheet.height)),
        cr(cairo_create(surface)) {}
  Surface(const Surface&) = delete;
  Surface& operator=(const Surface&) = delete;
  ~Surface() {
    cairo_destroy(cr);
    cairo_surface_destroy(surface);
  }
  void finish() const {
    auto status = cairo_status(cr);
    cairo_surface_finish(surface);
    if (status == CAIRO_STATUS_SUCCESS) status = cairo_surface_status(surface);
    if (status != CAIRO_STATUS_SUCCESS) {
      throw std::runtime_error(fmt::format("the PDF cannot be written: {}", cairo_status_to_string(status)));
    }
  }
  cairo_surface_t* surface;
  cairo_t* cr;
};

/// A paper's entry above its headings, where a document holds several.
std::string root_of(const Paper& paper) {
  if (paper.subject.empty() || paper.title.empty()) return paper.title + paper.subject;
  return paper.title + " · " + paper.subject;
}

Written written(const std::vector<const Paper*>& papers, const Options& options) {
  Written out;
  const auto sheet = size_of(options.sheet);
  Typesetter type;
  const Surface surface(sheet, out.bytes);
  set_metadata(surface.surface, papers, options);
  for (const auto* paper : papers) {
    const auto set = set_paper(*paper, sheet, type);
    std::vector<PlacedEntry> entries;
    draw_pages(surface.cr, type, set, entries);
    add_outline(surface.surface, entries, out.pages + 1, papers.size() > 1 ? root_of(*paper) : std::string{});
    out.pages += set.page_count();
    for (const auto& warning : set.warnings) out.warnings.push_back(fmt::format("{}: {}", paper->file, warning));
  }
  surface.finish();
  if (!is_date(options.created)) remove_date(out.bytes);
  return out;
}

}  // namespace

Written pdf(const Paper& paper, const Options& options) { return written({&paper}, options); }

Written pdf(const std::vector<Paper>& papers, const Options& options) {
  if (papers.empty()) throw std::invalid_argument("no paper to be written");
  std::vector<const Paper*> all;
  for (const auto& paper : papers) all.push_back(&paper);
  return written(all, options);
}

}  // namespace holdback::pdf
