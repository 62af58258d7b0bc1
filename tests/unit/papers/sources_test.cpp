#include "holdback/papers/sources.hpp"

#include <gtest/gtest.h>

namespace holdback::papers {
namespace {

const char* const list = R"(% a list
@article{first1900,
  author  = {A. {\AA}berg and B. Bj{\"o}rk},
  title   = {On {Brakes}},
  journal = {Annals},
  volume  = {3},
  pages   = {1--9},
  year    = {1900},
  note    = {memory}
}

@techreport{rule,
  title       = {A rule},
  institution = {An institute},
  number      = {R 12}
}
)";

TEST(source_in, says_who_what_where_and_when) {
  EXPECT_EQ(source_in(list, "first1900"), "A. Åberg and B. Björk: On Brakes. Annals 3, 1900");
}

TEST(source_in, leaves_out_what_the_list_does_not_say) {
  EXPECT_EQ(source_in(list, "rule"), "A rule. An institute, R 12");
}

TEST(source_in, knows_no_key_that_is_not_there) {
  EXPECT_FALSE(source_in(list, "first"));
  EXPECT_FALSE(source_in(list, "derived"));
  EXPECT_FALSE(source_in("", "rule"));
}

TEST(source_called, reads_the_list_of_the_project) {
  EXPECT_EQ(source_called("archard1953"),
            "J. F. Archard: Contact and Rubbing of Flat Surfaces. Journal of Applied Physics 24, 1953");
}

}  // namespace
}  // namespace holdback::papers
