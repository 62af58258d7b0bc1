// `history` through the façade: the table that is written goes back in and gives the same answer; what is wrong is
// told.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "holdback/api/answer.hpp"
#include "holdback/report/report.hpp"

namespace holdback::api {
namespace {

using Json = nlohmann::json;

/// Two brakes over some months; invented.
const std::string entries =
    "number,stand,date,kind,corrects,brake,depth [mm],energy [MJ],running_time [h],friction,text\n"
    "1,Slitter,2025-01-10,pads,,,12,,,,\"new, all\"\n"
    "2,Slitter,2025-02-10,energy,,,,95000,160,,\n"
    "3,Slitter,2025-02-10,wear,,front,11.1,,,,\n"
    "4,Slitter,2025-02-10,wear,,rear,11.3,,,,\n"
    "5,Slitter,2025-03-12,energy,,,,88000,150,,\n"
    "6,Slitter,2025-03-12,wear,,front,10.2,,,,\n"
    "7,Slitter,2025-03-12,wear,,rear,9,,,,\n"
    "8,Slitter,2025-03-12,wear,7,rear,10.6,,,,wrong pad\n"
    "9,Slitter,2025-04-12,energy,,,,99000,171,,\n"
    "10,Slitter,2025-04-12,wear,,front,9.3,,,,\n"
    "11,Slitter,2025-04-12,wear,,rear,9.9,,,,\n"
    "12,Slitter,2025-01-11,fit,,front,,,,0.38,\n"
    "13,Slitter,2025-02-11,fit,,front,,,,0.37,\n"
    "14,Slitter,2025-04-11,fit,,front,,,,0.345,\n";

Answer asked(const std::string& text, const std::string& stand = {}) {
  Request request;
  request.command = "history";
  request.history = HistoryRequest{{"entries.csv", text}, stand};
  return answer(request);
}

TEST(history, tells_the_next_change) {
  const auto found = asked(entries);
  ASSERT_EQ(found.outcome, Outcome::holds);
  ASSERT_TRUE(found.history && found.history->forecast);
  const auto& forecast = *found.history->forecast;
  EXPECT_EQ(forecast.basis, UseBasis::energy);
  EXPECT_EQ(forecast.governs, "brake front");
  // 2.7 mm in 282 GJ by the ends alone: 9.3 mm last about 970 GJ.
  EXPECT_NEAR(*forecast.remaining.middle / 970e9, 1, 0.06);
  EXPECT_LT(forecast.remaining.low, *forecast.remaining.middle);
  EXPECT_LT(*forecast.remaining.middle, *forecast.remaining.high);
  EXPECT_TRUE(forecast.running);
  ASSERT_EQ(found.history->trends.size(), 1U);
  EXPECT_LT(found.history->trends[0].per_year, 0);
  EXPECT_FALSE(found.history->cautions.empty());
}

TEST(history, its_table_goes_back_in) {
  const auto first = asked(entries);
  for (const auto system : {units::System::si, units::System::us}) {
    const auto again = asked(report::csv(first, system));
    ASSERT_TRUE(again.history) << report::csv(first, system);
    ASSERT_EQ(again.history->entries.size(), first.history->entries.size());
    for (std::size_t i = 0; i < first.history->entries.size(); ++i) {
      const auto& a = first.history->entries[i];
      const auto& b = again.history->entries[i];
      EXPECT_EQ(a.number, b.number);
      EXPECT_EQ(a.day, b.day);
      EXPECT_EQ(a.text, b.text);
      EXPECT_EQ(a.corrected_by, b.corrected_by);
      EXPECT_NEAR(a.depth.value_or(0), b.depth.value_or(0), 1e-11);
      EXPECT_NEAR(a.energy.value_or(0), b.energy.value_or(0), 100);
    }
    EXPECT_EQ(again.history->forecast->date.middle, first.history->forecast->date.middle);
    EXPECT_EQ(again.history->forecast->governs, first.history->forecast->governs);
  }
}

TEST(history, asks_for_the_stand_when_there_are_several) {
  const auto two = entries + "15,Other,2025-04-11,note,,,,,,,painted\n";
  const auto unnamed = asked(two);
  EXPECT_EQ(unnamed.outcome, Outcome::bad_input);
  ASSERT_EQ(unnamed.problems.size(), 1U);
  EXPECT_EQ(unnamed.problems[0].accepted.text, "one of: Slitter, Other");
  EXPECT_EQ(asked(two, "Other").history->entries.size(), 1U);
  EXPECT_EQ(asked(two, "Third").outcome, Outcome::bad_input);
}

TEST(history, refuses_wrong_entries_and_keeps_warnings) {
  const auto wrong = asked(entries + "15,Slitter,2025-04-31,wear,,front,-1,,,,\n");
  EXPECT_EQ(wrong.outcome, Outcome::bad_input);
  EXPECT_EQ(wrong.problems.size(), 2U);
  EXPECT_FALSE(wrong.history);
  const auto grown = asked(entries + "15,Slitter,2025-05-01,wear,,front,11,,,,\n");
  ASSERT_TRUE(grown.history);
  ASSERT_EQ(grown.problems.size(), 1U);
  EXPECT_EQ(grown.problems[0].severity, Severity::warning);
}

TEST(history, is_asked_for_in_json_as_the_page_does) {
  const Json request{{"command", "history"},
                     {"history", {{"name", "entries.csv"}, {"text", entries}, {"stand", "Slitter"}}}};
  const auto found = Json::parse(answer(request.dump()));
  EXPECT_EQ(found["outcome"], "holds");
  EXPECT_EQ(found["history"]["entries"].size(), 14U);
  EXPECT_EQ(found["history"]["entries"][6]["corrected_by"], 8);
  EXPECT_EQ(found["history"]["forecast"]["unit"], "J");
  EXPECT_FALSE(found["history"]["forecast"]["date"]["high"].get<std::string>().empty());
}

TEST(history, in_text_says_what_matters_first) {
  const auto text = report::text(asked(entries), {});
  const auto at = [&](const std::string& part) { return text.find(part); };
  for (const auto* part : {"Next change of pads: about 20", "Pads in use", "What to measure next",
                           "Fitted constants over time", "it falls", "corrected by 8", "release the air of the brake"})
    EXPECT_NE(at(part), std::string::npos) << part << "\n" << text;
  EXPECT_LT(at("Next change of pads"), at("Entries"));
}

TEST(history, text_shows_the_last_entries_and_all_when_asked) {
  std::string many = "stand,date,kind,text\n";
  for (int i = 0; i < 30; ++i) many += "A,2025-01-10,note,day " + std::to_string(i) + "\n";
  const auto found = asked(many);
  EXPECT_NE(report::text(found, {}).find("The last 20 of 30 entries"), std::string::npos);
  report::Style all;
  all.all = true;
  EXPECT_NE(report::text(found, all).find("day 0"), std::string::npos);
  EXPECT_EQ(report::text(found, {}).find("day 0\n"), std::string::npos);
}

}  // namespace
}  // namespace holdback::api
