// look.py finds what it is there for: pages broken on purpose.
#include <cairo-pdf.h>
#include <gmock/gmock.h>

#include <functional>

#include "papers/reading.hpp"

namespace holdback {
namespace {

using testing::HasSubstr;

cairo_status_t append(void* to, const unsigned char* data, unsigned int length) {
  static_cast<std::string*>(to)->append(reinterpret_cast<const char*>(data), length);
  return CAIRO_STATUS_SUCCESS;
}

std::string page(const std::function<void(cairo_t*)>& draw) {
  std::string bytes;
  auto* surface = cairo_pdf_surface_create_for_stream(append, &bytes, 595, 842);
  auto* cr = cairo_create(surface);
  cairo_select_font_face(cr, "DejaVu Sans", CAIRO_FONT_SLANT_NORMAL, CAIRO_FONT_WEIGHT_NORMAL);
  cairo_set_font_size(cr, 10);
  draw(cr);
  cairo_destroy(cr);
  cairo_surface_finish(surface);
  cairo_surface_destroy(surface);
  return bytes;
}

void write(cairo_t* cr, double x, double y, const char* text) {
  cairo_move_to(cr, x, y);
  cairo_show_text(cr, text);
}

void expect_found(const std::function<void(cairo_t*)>& draw, const std::string& fault) {
  const auto looked = File(page(draw)).look();
  EXPECT_EQ(looked.code, 1);
  EXPECT_THAT(looked.output, HasSubstr(fault));
}

TEST(Look, ASoundPagePasses) {
  const auto looked = File(page([](cairo_t* cr) {
                        write(cr, 100, 100, "first line");
                        write(cr, 100, 111, "second line");
                        write(cr, 170, 100, "beside");
                      })).look();
  EXPECT_EQ(looked.code, 0) << looked.output;
}

TEST(Look, AWordOutsideOfTheMarginsIsFound) {
  expect_found([](cairo_t* cr) { write(cr, 520, 100, "overflowing"); }, "'overflowing' stands outside of the margins");
  expect_found([](cairo_t* cr) { write(cr, 30, 100, "outside"); }, "'outside' stands outside of the margins");
  expect_found([](cairo_t* cr) { write(cr, 100, 830, "low"); }, "'low' stands outside of the margins");
}

TEST(Look, WordsOnEachOtherAreFound) {
  expect_found(
      [](cairo_t* cr) {
        write(cr, 100, 100, "below");
        write(cr, 110, 102, "above");
      },
      "lie on each other");
}

TEST(Look, AWordThatIsCutOffIsFound) {
  expect_found(
      [](cairo_t* cr) {
        cairo_rectangle(cr, 100, 80, 22, 50);
        cairo_clip(cr);
        write(cr, 100, 100, "clipped");
      },
      "nothing is seen of the right of 'clipped'");
  expect_found(
      [](cairo_t* cr) {
        write(cr, 100, 100, "covered");
        cairo_set_source_rgb(cr, 1, 1, 1);
        cairo_rectangle(cr, 90, 80, 80, 50);
        cairo_fill(cr);
      },
      "nothing is seen of all of 'covered'");
}

TEST(Look, InkAtTheEdgeIsFound) {
  expect_found(
      [](cairo_t* cr) {
        cairo_rectangle(cr, 100, 300, 480, 2);
        cairo_fill(cr);
      },
      "of the right edge");
}

}  // namespace
}  // namespace holdback
