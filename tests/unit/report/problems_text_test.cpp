// Problems as text: a person must find the place, see the value, and know what would be accepted.
#include <gtest/gtest.h>

#include <sstream>

#include "holdback/draw/cells.hpp"
#include "holdback/report/report.hpp"
#include "sample.hpp"

namespace holdback::report {
namespace {

TEST(problems_text, shows_place_line_arrow_field_value_and_what_is_accepted) {
  EXPECT_EQ(problems_text({sample::problem()}, {}),
            "stand.toml:42:17: error: the core is not smaller than the full roll: 500 mm against 400 mm\n"
            "   42 | core_diameter = \"500 mm\"\n"
            "      |                 ^\n"
            "      field: roll[0].core_diameter · value: \"500 mm\" · accepted: below 400 mm\n"
            "1 error\n");
}

TEST(problems_text, counts_errors_and_warnings_apart) {
  auto warning = sample::problem();
  warning.severity = Severity::warning;
  const auto text = problems_text({sample::problem(), warning, sample::problem()}, {});
  EXPECT_NE(text.find("\n2 errors, 1 warning\n"), std::string::npos) << text;
  EXPECT_EQ(problems_text({}, {}), "");
}

TEST(problems_text, says_it_in_the_readers_units) {
  EXPECT_NE(problems_text({sample::problem()}, {units::System::us, false, 100, false}).find("below 15.7 in"),
            std::string::npos);
}

TEST(problems_text, a_long_line_is_cut_around_the_arrow) {
  auto problem = sample::problem();
  problem.source_line = std::string(300, 'a') + "WRONG" + std::string(300, 'b');
  problem.where.column = 301;
  std::istringstream lines(problems_text({problem}, {}));
  std::string source;
  std::string arrow;
  std::getline(lines, source);
  std::getline(lines, source);
  std::getline(lines, arrow);
  EXPECT_LE(draw::columns(source), 100);
  // "…" takes one column but three bytes, so columns are compared by the text before the word.
  EXPECT_EQ(draw::columns(source.substr(0, source.find("WRONG"))), static_cast<int>(arrow.find('^')));
}

TEST(problems_text, the_arrow_counts_characters_not_bytes) {
  auto problem = sample::problem();
  problem.source_line = "\tname = \"Größe µ\", x = 1";
  problem.where.column = 20;  // of the x
  const auto text = problems_text({problem}, {});
  EXPECT_NE(text.find("   42 |  name = \"Größe µ\", x = 1\n      |                    ^\n"), std::string::npos) << text;
}

TEST(problems_text, a_file_cannot_steer_the_terminal) {
  auto problem = sample::problem();
  problem.source_line = "name = \"\x1b[2J\x07\"";
  problem.value = "\x1b]0;title\x07";
  problem.file = "\x1b[31m.toml";
  EXPECT_EQ(problems_text({problem}, {}).find('\x1b'), std::string::npos);
  EXPECT_EQ(problems_text({problem}, {}).find('\x07'), std::string::npos);
}

TEST(problems_text, without_a_place_it_says_what_is_wrong) {
  Problem problem;
  problem.what = {"cannot be read", {}};
  EXPECT_EQ(problems_text({problem}, {}), "error: cannot be read\n1 error\n");
}

TEST(problems_text, colour_stands_beside_the_words) {
  const auto text = problems_text({sample::problem()}, {units::System::si, true, 100, false});
  EXPECT_NE(text.find('\x1b'), std::string::npos);
  EXPECT_NE(text.find("error: "), std::string::npos);
}

}  // namespace
}  // namespace holdback::report
