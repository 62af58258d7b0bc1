#include "holdback/draw/svg.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <map>

#include "unit/draw/pictures.hpp"

namespace holdback::draw {
namespace {

constexpr double infinite = std::numeric_limits<double>::infinity();
constexpr double undefined = std::numeric_limits<double>::quiet_NaN();

Scene everything() {
  Scene scene;
  scene.title = "Torque <over> the roll & \"more\"";
  scene.description = "all marks";
  add(scene, Segment{{0, 0}, {10, 10}}, {MarkRole::axis});
  add(scene, Polyline{{{0, 0}, {1.2345, 2}, {3, 4}}}, {MarkRole::curve, Pattern::dashed, 3});
  add(scene, Polygon{{{0, 0}, {1, 0}, {1, 1}}}, {MarkRole::bad});
  add(scene, Rectangle{{1, 2, 3, 4}, true}, {MarkRole::good});
  add(scene, Rectangle{{1, 2, 3, 4}, false}, {MarkRole::muted});
  add(scene, Circle{{5, 5}, 1, true}, {MarkRole::tight});
  add(scene, Label{{5, 5}, "N·m < 3 & \"x\"", Anchor::middle, 3, Weight::bold, -90}, {MarkRole::text});
  return scene;
}

std::size_t count(std::string_view text, std::string_view part) {
  std::size_t found = 0;
  for (auto at = text.find(part); at != std::string_view::npos; at = text.find(part, at + 1)) ++found;
  return found;
}

TEST(svg, is_well_formed_with_every_shape) {
  const auto text = svg(everything());
  EXPECT_EQ(pictures::Xml(text).fault(), "") << text;
  for (const auto* tag : {"<line ", "<polyline ", "<polygon ", "<circle ", "<text "}) EXPECT_EQ(count(text, tag), 1U);
  EXPECT_EQ(count(text, "<rect "), 3U);  // two and the paper
  EXPECT_EQ(svg(everything()), text);
}

TEST(svg, the_checker_itself_finds_faults) {
  for (const auto* wrong : {"<a><b></a></b>", "<a>&</a>", "<a x=\"1\" x=\"2\"/>", "<a x=1/>", "<a>", "<a/><b/>",
                            "<a>\x01</a>", "text", "<a y=\"<\"/>"})
    EXPECT_NE(pictures::Xml(wrong).fault(), "") << wrong;
  EXPECT_EQ(pictures::Xml("<?xml version=\"1.0\"?>\n<a x=\"1\"><b/>&lt;</a>\n").fault(), "");
}

TEST(svg, has_a_page_in_millimetres_a_title_and_a_description) {
  const auto text = svg(everything());
  EXPECT_NE(text.find("width=\"180mm\" height=\"110mm\" viewBox=\"0 0 180 110\" role=\"img\""), std::string::npos);
  EXPECT_NE(text.find("<title>Torque &lt;over&gt; the roll &amp; &quot;more&quot;</title>"), std::string::npos);
  EXPECT_NE(text.find("<desc>all marks</desc>"), std::string::npos);
}

TEST(svg, brings_nothing_from_elsewhere) {
  const auto text = svg(everything());
  EXPECT_EQ(count(text, "http"), 1U);  // the name space alone
  for (const auto* denied : {"<script", "@import", "url(", "href", "onload", "@font-face"})
    EXPECT_EQ(text.find(denied), std::string::npos) << denied;
  EXPECT_NE(text.find("sans-serif"), std::string::npos);
}

TEST(xml_text, replaces_what_xml_or_a_reader_cannot_take) {
  EXPECT_EQ(xml_text("a<b>&\"c\""), "a&lt;b&gt;&amp;&quot;c&quot;");
  EXPECT_EQ(xml_text(std::string("\0\x01\x1b", 3)), "\uFFFD\uFFFD\uFFFD");
  EXPECT_EQ(xml_text("line\nbreak\ttab"), "line\uFFFDbreak tab");
  EXPECT_EQ(xml_text("\xff\xc3"), "\uFFFD\uFFFD");                  // no UTF-8
  EXPECT_EQ(xml_text("\xEF\xBF\xBE\xEF\xBF\xBF"), "\uFFFD\uFFFD");  // U+FFFE and U+FFFF are no characters of XML
  EXPECT_EQ(xml_text("\u202E"), "\uFFFD");                          // turns the writing direction
  EXPECT_EQ(xml_text("Ø 600 mm, 漢"), "Ø 600 mm, 漢");
}

TEST(svg, names_in_labels_cannot_break_out) {
  Scene scene;
  scene.title = "</title><script>alert(1)</script>";
  add(scene, Label{{1, 1}, "</text><script/>\x02", Anchor::start, 3, Weight::normal, 0}, {});
  const auto text = svg(scene);
  EXPECT_EQ(pictures::Xml(text).fault(), "") << text;
  EXPECT_EQ(text.find("<script"), std::string::npos);
}

TEST(svg, leaves_out_what_has_no_place) {
  Scene scene;
  for (const double wrong : {infinite, -infinite, undefined, 1e300}) {
    add(scene, Segment{{wrong, 0}, {1, 1}}, {});
    add(scene, Polyline{{{0, 0}, {1, wrong}}}, {});
    add(scene, Polygon{{{0, 0}, {1, 0}, {wrong, 1}}}, {});
    add(scene, Rectangle{{0, 0, wrong, 1}, true}, {});
    add(scene, Circle{{0, 0}, wrong, true}, {});
    add(scene, Label{{wrong, 0}, "x", Anchor::start, 3, Weight::normal, 0}, {});
  }
  add(scene, Polyline{{{0, 0}}}, {});
  add(scene, Polygon{{{0, 0}, {1, 1}}}, {});
  add(scene, Circle{{0, 0}, 0, true}, {});
  add(scene, Label{{0, 0}, "", Anchor::start, 3, Weight::normal, 0}, {});
  const auto text = svg(scene);
  EXPECT_EQ(count(text, "<rect "), 1U);
  for (const auto* tag : {"<line ", "<poly", "<circle", "<text ", "\"nan", "\"inf"})
    EXPECT_EQ(text.find(tag), std::string::npos) << tag;
  scene.width = undefined;
  scene.height = -5;
  EXPECT_EQ(pictures::Xml(svg(scene)).fault(), "");
}

TEST(svg, numbers_are_short_and_never_minus_zero) {
  Scene scene;
  add(scene, Segment{{-0.001, 1.5}, {2.004, 3.999}}, {});
  EXPECT_NE(svg(scene).find("x1=\"0\" y1=\"1.5\" x2=\"2\" y2=\"4\""), std::string::npos) << svg(scene);
}

TEST(svg, patterns_differ_without_colour) {
  Scene solid;
  Scene dashed;
  Scene dotted;
  add(solid, Segment{{0, 0}, {1, 1}}, {MarkRole::curve, Pattern::solid, 0});
  add(dashed, Segment{{0, 0}, {1, 1}}, {MarkRole::curve, Pattern::dashed, 0});
  add(dotted, Segment{{0, 0}, {1, 1}}, {MarkRole::curve, Pattern::dotted, 0});
  EXPECT_EQ(count(svg(solid), "stroke-dasharray"), 0U);
  EXPECT_EQ(count(svg(dashed), "stroke-dasharray"), 1U);
  EXPECT_NE(svg(dashed), svg(dotted));
}

// Relative luminance and contrast as WCAG 2.2 defines them (w3.org, "relative luminance", "contrast ratio"; memory).
double luminance(const std::string& hex) {
  const auto channel = [&](std::size_t at) {
    const double c = std::stoi(hex.substr(at, 2), nullptr, 16) / 255.0;
    return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
  };
  return 0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5);
}

double contrast(const std::string& a, const std::string& b) {
  const double first = luminance(a);
  const double second = luminance(b);
  return (std::max(first, second) + 0.05) / (std::min(first, second) + 0.05);
}

/// {class: colour} of one half of the style sheet.
std::map<std::string, std::string> colours(const std::string& sheet) {
  std::map<std::string, std::string> out;
  for (auto at = sheet.find('.'); at != std::string::npos; at = sheet.find('.', at + 1)) {
    const auto brace = sheet.find('{', at);
    const auto hash = sheet.find('#', at);
    if (hash == std::string::npos || hash > sheet.find('}', at)) continue;
    out[sheet.substr(at + 1, brace - at - 1)] = sheet.substr(hash, 7);
  }
  return out;
}

TEST(svg, colours_stand_out_from_the_paper_by_day_and_by_night) {
  const auto text = svg({});
  const auto turn = text.find("@media screen and (prefers-color-scheme:dark)");
  ASSERT_NE(turn, std::string::npos);
  const auto sheet = text.find("<style");
  for (const auto& half : {text.substr(sheet, turn - sheet), text.substr(turn)}) {
    const auto found = colours(half);
    ASSERT_GT(found.size(), 40U);
    for (const auto& [name, colour] : found) {
      if (name[0] != 't' || name == "t-grid" || name == "t-area") continue;  // nothing is written in these two
      EXPECT_GE(contrast(colour, found.at("paper")), 4.5) << name;
    }
    for (const auto* cell : {"f-good", "f-tight", "f-bad", "f-area", "f-grid"}) {
      EXPECT_GE(contrast(found.at("t-text"), found.at(cell)), 4.5) << cell;
    }
    for (const auto& [line, fill] : {std::pair{"s-good", "f-good"}, {"s-tight", "f-tight"}, {"s-bad", "f-bad"}})
      EXPECT_GE(contrast(found.at(line), found.at(fill)), 3.0) << line;
  }
}

}  // namespace
}  // namespace holdback::draw
