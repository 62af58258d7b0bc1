#include "history.hpp"

#include <algorithm>
#include <ctime>
#include <nlohmann/json.hpp>

#include "actions.hpp"
#include "history_store.hpp"
#include "holdback/api/answer.hpp"
#include "holdback/api/request_problem.hpp"
#include "holdback/draw/cells.hpp"
#include "holdback/files/history_file.hpp"
#include "holdback/model/date.hpp"
#include "holdback/model/history_fields.hpp"
#include "holdback/report/report.hpp"
#include "host.hpp"

namespace holdback::cli {

namespace {

using Json = nlohmann::json;

Answer refused(Problems problems) {
  Answer answer;
  answer.command = "history";
  answer.outcome = Outcome::bad_input;
  answer.problems = std::move(problems);
  return answer;
}

/// Today where the program runs.
int today() {
  const std::time_t now = std::time(nullptr);
  std::tm parts{};
  ::localtime_r(&now, &parts);
  return day_of(CivilDate{parts.tm_year + 1900, parts.tm_mon + 1, parts.tm_mday}).value_or(0);
}

/// The entries as the table that the core reads.
api::Source table_of(const std::vector<HistoryEntry>& entries, const std::string& name) {
  Answer answer;
  answer.history.emplace().entries = entries;
  return {name, report::csv(answer, units::System::si)};
}

/// The name of the stand: given, or the title of its file.
std::string stand_name(const Settings& settings, Problems& problems) {
  if (!settings.stand_name.empty() || settings.stand.empty()) return settings.stand_name;
  api::Request request;
  request.command = "check";
  request.stand = read_or_note(settings.stand, problems);
  if (has_errors(problems)) return {};
  const auto read = api::read_stand_for(request);
  if (!read.stand) {
    problems.insert(problems.end(), read.answer.problems.begin(), read.answer.problems.end());
    return {};
  }
  const std::string& title = read.stand->title;
  if (title.empty())
    problems.push_back(api::request_problem("the stand file has no title", "stand.title", "", "--stand-name NAME"));
  return title;
}

// ---- add ------------------------------------------------------------------------------------------------------------

/// A number of the answer, bare or as an object with its value.
std::optional<double> number_in(const Json& value) {
  if (value.is_number()) return value.get<double>();
  if (value.is_object() && value.contains("value") && value["value"].is_number()) return value["value"].get<double>();
  return std::nullopt;
}

/// The constants that an answer of `fit` holds, as words of an entry.
std::vector<files::EntryWord> fitted_words(const Settings& settings, Problems& problems) {
  const api::Source source = read_or_note(settings.fit_answer, problems);
  if (has_errors(problems)) return {};
  const Json answer = Json::parse(source.text, nullptr, false);
  const auto refuse = [&](const std::string& what) {
    problems.push_back(api::request_problem(what, "", "", "what `holdback fit … --json` writes"));
    problems.back().file = source.name;
  };
  std::vector<files::EntryWord> words;
  if (!answer.is_object() || !answer.contains("fit") || !answer["fit"].is_object()) {
    refuse("this is no answer of fit");
    return words;
  }
  for (const char* key : {"torque_per_pressure", "threshold", "drag", "friction"}) {
    const auto number = answer["fit"].contains(key) ? number_in(answer["fit"][key]) : std::nullopt;
    if (number) words.push_back({key, units::write(*number, history_field(key)->kind, units::System::si)});
  }
  if (words.empty()) refuse("the answer holds none of the constants that are kept");
  return words;
}

/// "depth=9.4 mm" in two.
files::EntryWord word_of(const std::string& word, Problems& problems) {
  const std::size_t equals = word.find('=');
  if (equals == std::string::npos || equals == 0)
    problems.push_back(
        api::request_problem("this is no value of an entry", "WHAT", word, "KEY=VALUE, such as depth=9.4mm"));
  return {word.substr(0, equals), equals == std::string::npos ? "" : word.substr(equals + 1)};
}

int number_of(const std::string& text, Problems& problems) {
  if (text.empty()) return 0;
  const auto read = units::parse(text, Quantity::count);
  const auto* value = std::get_if<double>(&read);
  if (value != nullptr && *value >= 1 && *value <= 1e9) return static_cast<int>(*value);
  problems.push_back(
      api::request_problem("this is no number of an entry", "--corrects", text, "a whole number from 1 on"));
  return 0;
}

HistoryEntry entry_of(const Settings& settings, Problems& problems) {
  const std::string kind = settings.readings.empty() ? "" : settings.readings.front();
  std::vector<files::EntryWord> words;
  for (std::size_t i = 1; i < settings.readings.size(); ++i) words.push_back(word_of(settings.readings[i], problems));
  if (!settings.fit_answer.empty()) {
    const auto fitted = fitted_words(settings, problems);
    words.insert(words.end(), fitted.begin(), fitted.end());
  }
  if (has_errors(problems)) return {};
  const std::string date = settings.date.empty() ? date_text(today()) : settings.date;
  auto read = files::read_entry(kind, date, words);
  problems.insert(problems.end(), read.problems.begin(), read.problems.end());
  HistoryEntry entry = std::move(read.entries.front());
  entry.corrects = number_of(settings.corrects, problems);
  if (!has_errors(problems) && entry.day > today()) {
    problems.push_back(api::request_problem("the date lies in the future", "date", date, "the day on which it was so"));
    problems.back().severity = Severity::warning;
  }
  return entry;
}

/// The name as a message shows it; empty or long ones, and those with line ends, are refused.
void check_name(const std::string& name, Problems& problems) {
  if (has_errors(problems)) return;
  if (name.empty())
    problems.push_back(api::request_problem("nothing says whose entry it is", "--stand-name", "",
                                            "--stand-name NAME, or --stand FILE whose title is the name"));
  else if (name.size() > 200 || draw::plain(name) != name || name.front() == ' ' || name.back() == ' ')
    problems.push_back(api::request_problem("the name holds a line end, blanks at an end or too much", "--stand-name",
                                            name, "one line of 1 to 200 characters"));
}

/// What all entries of the stand together say of the new one.
Problems judged(const std::vector<HistoryEntry>& all, const HistoryEntry& entry) {
  std::vector<HistoryEntry> of_stand;
  std::copy_if(all.begin(), all.end(), std::back_inserter(of_stand),
               [&](const HistoryEntry& each) { return each.stand == entry.stand; });
  Problems found = problems_of(of_stand);
  const std::string name = name_of(all.back()) + ",";
  found.erase(
      std::remove_if(found.begin(), found.end(), [&](const Problem& each) { return each.field.rfind(name, 0) != 0; }),
      found.end());
  return found;
}

int add_entry(const Settings& settings) {
  Problems problems;
  HistoryEntry entry = entry_of(settings, problems);
  entry.stand = stand_name(settings, problems);
  check_name(entry.stand, problems);
  if (has_errors(problems)) return deliver(refused(std::move(problems)), settings);
  // A correction needs what it corrects: it makes no file.
  const bool may_create = entry.corrects == 0;
  if (!may_create && !exists(settings.file))
    return deliver(refused({api::request_problem("there is no such file yet, so nothing in it "
                                                 "to correct",
                                                 "--corrects", settings.corrects, "an entry without --corrects")}),
                   settings);
  HistoryStore store(settings.file, HistoryStore::For::adding);
  const Problems found = store.add(entry, [&](const std::vector<HistoryEntry>& all) { return judged(all, entry); });
  problems.insert(problems.end(), found.begin(), found.end());
  if (has_errors(problems)) return deliver(refused(std::move(problems)), settings);
  const auto styles = styles_of(settings);
  if (settings.json) {
    Answer answer;
    answer.command = "history";
    answer.problems = problems;
    History& kept = answer.history.emplace();
    kept.stand = entry.stand;
    kept.entries = {entry};
    write(report::json(answer), settings);
  } else {
    std::fputs(report::problems_text(problems, styles.err).c_str(), stderr);
    write("kept as " + name_of(entry) + " of " + entry.stand + ": " + std::string(key_of(entry.kind)) + ", " +
              date_text(entry.day) + "\n",
          settings);
  }
  return 0;
}

// ---- show -----------------------------------------------------------------------------------------------------------

int show(const Settings& settings) {
  if (settings.readings.size() > 1)
    throw Refusal("'" + settings.readings[1] + "' is one argument too many; a name with blanks stands in quotes");
  api::Request request;
  request.command = "history";
  request.job = settings.job;
  request.history.emplace();
  Problems problems;
  if (!settings.readings.empty())
    request.history->stand = settings.readings.front();
  else if (!settings.stand_name.empty())
    request.history->stand = settings.stand_name;
  if (!settings.stand.empty()) request.stand = read_or_note(settings.stand, problems);
  if (!problems.empty()) return deliver(refused(std::move(problems)), settings);
  HistoryStore store(settings.file, HistoryStore::For::reading);
  const auto entries = store.entries();
  if (settings.csv && request.history->stand.empty()) {  // of all stands; the page picks one
    Answer answer;
    answer.command = "history";
    answer.history.emplace().entries = entries;
    return deliver(answer, settings);
  }
  request.history->entries = table_of(entries, settings.file);
  return deliver(api::answer(request), settings);
}

}  // namespace

int keep_history(const Settings& settings) {
  protect_inputs(settings);
  try {
    return settings.topic == "add" ? add_entry(settings) : show(settings);
  } catch (const StoreFault& fault) {
    return deliver(refused({fault.problem}), settings);
  }
}

}  // namespace holdback::cli
