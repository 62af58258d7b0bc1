// The JSON form of the façade: text in, text out, nothing thrown.
#include <nlohmann/json.hpp>

#include "holdback/api/answer.hpp"
#include "holdback/api/base64.hpp"
#include "holdback/api/live.hpp"
#include "holdback/api/papers.hpp"
#include "holdback/api/request_problem.hpp"
#include "holdback/report/report.hpp"

namespace holdback::api {

namespace {

using Json = nlohmann::json;

// A request that cannot be read: which field, what it holds, what it takes.
struct BadRequest {
  Problem problem;
};

[[noreturn]] void refuse(const std::string& what, const std::string& field, const std::string& value,
                         const std::string& accepted) {
  Problem problem = request_problem(what, field, value, accepted);
  problem.file = "request";
  throw BadRequest{problem};
}

std::string text_field(const Json& object, const std::string& key, const std::string& path) {
  const auto at = object.find(key);
  if (at == object.end()) return {};
  if (!at->is_string()) refuse("a text is due here", path + key, at->dump(), "a JSON string");
  return at->get<std::string>();
}

std::optional<std::string> optional_text(const Json& object, const std::string& key) {
  if (!object.contains(key)) return std::nullopt;
  return text_field(object, key, "");
}

int whole_number(const Json& object, const std::string& key, int lowest, int highest) {
  const Json& value = object.at(key);
  const std::string accepted = "a whole number from " + std::to_string(lowest) + " to " + std::to_string(highest);
  if (!value.is_number_integer() || value < lowest || value > highest)
    refuse("a whole number is due here", key, value.dump(), accepted);
  return value.get<int>();
}

bool truth(const Json& value, const std::string& path) {
  if (!value.is_boolean()) refuse("true or false is due here", path, value.dump().substr(0, 60), "true, false");
  return value.get<bool>();
}

std::vector<ControlKind> controls(const Json& value) {
  if (!value.is_array()) refuse("a list of controls is due here", "compare", value.dump().substr(0, 60), control_words);
  std::vector<ControlKind> kinds;
  for (const Json& one : value) {
    const auto kind = one.is_string() ? control_called(one.get<std::string>()) : std::nullopt;
    if (!kind) refuse("no such control", "compare", one.dump().substr(0, 60), control_words);
    kinds.push_back(*kind);
  }
  return kinds;
}

Idlers idlers(const std::string& word) {
  if (word == "each") return Idlers::each;
  if (word == "following") return Idlers::following;
  if (word != "as needed") refuse("no such way to move idlers", "idlers", word, "as needed, each, following");
  return Idlers::as_needed;
}

Source source(const Json& request, const std::string& key) {
  const Json& value = request.at(key);
  if (!value.is_object() || !value.contains("text"))
    refuse("a file is given as an object with its name and text", key, value.dump().substr(0, 60),
           R"({"name": "stand.toml", "text": "…"})");
  Source source{text_field(value, "name", key + "."), text_field(value, "text", key + ".")};
  if (source.name.empty()) source.name = key;
  if (value.contains("sheet")) source.sheet = truth(value.at("sheet"), key + ".sheet");
  return source;
}

/// A sound: JSON holds no bytes, so they come as base64.
Source recording(const Json& request) {
  const Json& value = request.at("recording");
  static const char* const accepted = R"({"name": "span.wav", "base64": "UklGR…"})";
  if (!value.is_object() || !value.contains("base64"))
    refuse("a recording is given as an object with its name and its bytes in base64", "recording",
           value.dump().substr(0, 60), accepted);
  const std::string text = text_field(value, "base64", "recording.");
  auto bytes = bytes_of_base64(text);
  if (!bytes) refuse("these are no bytes in base64", "recording.base64", text.substr(0, 60), accepted);
  Source source{text_field(value, "name", "recording."), std::move(*bytes)};
  if (source.name.empty()) source.name = "recording";
  return source;
}

/// {"span": "1.2 m", "force": ["6.4 N", "6.3 N"]}
std::vector<Reading> readings_of(const Json& json) {
  static const char* const accepted = R"({"span": "1.2 m", "force": ["6.4 N", "6.3 N"]})";
  if (!json.is_object()) refuse("readings are an object of texts", "readings", json.dump().substr(0, 60), accepted);
  std::vector<Reading> readings;
  for (const auto& [key, value] : json.items()) {
    const Json several = value.is_array() ? value : Json::array({value});
    for (const Json& one : several) {
      if (!one.is_string()) refuse("a reading is a text", "readings." + key, one.dump().substr(0, 60), accepted);
      readings.push_back({key, one.get<std::string>()});
    }
  }
  return readings;
}

/// The text of a log, handed out piece by piece.
std::function<std::size_t(char*, std::size_t)> reader_of(std::string text) {
  return [text = std::move(text), at = std::size_t{0}](char* to, std::size_t most) mutable {
    const std::size_t bytes = std::min(most, text.size() - at);
    std::copy_n(text.data() + at, bytes, to);
    at += bytes;
    return bytes;
  };
}

void read_on_site(const Json& json, Request& request) {
  if (json.contains("method") || json.contains("readings")) {
    request.measure.emplace();
    request.measure->method = text_field(json, "method", "");
    if (json.contains("readings")) request.measure->readings = readings_of(json["readings"]);
    if (json.contains("recording")) request.measure->recording = recording(json);
    if (json.contains("instruction")) request.measure->instruction = truth(json["instruction"], "instruction");
  }
  if (json.contains("table")) {
    request.fit = FitRequest{source(json, "table")};
    if (json.contains("write")) request.fit->write = truth(json["write"], "write");
  }
  if (json.contains("log")) {
    Source log = source(json, "log");
    const auto bytes = static_cast<double>(log.text.size());
    const auto more = [&](const char* key) { return text_field(json, key, ""); };
    request.log = LogRequest{
        log.name, reader_of(std::move(log.text)), more("columns"), more("rate"), more("from"), more("to"), bytes};
  }
  if (json.contains("history")) {
    request.history = HistoryRequest{source(json, "history"), text_field(json["history"], "stand", "history.")};
  }
}

void refuse_unknown_keys(const Json& json) {
  static const char* const known[] = {
      "version", "command", "stand",     "jobs",      "job",         "all",         "brake",
      "grade",   "brakes",  "tolerance", "scenario",  "compare",     "idlers",      "threads",
      "brief",   "method",  "readings",  "recording", "instruction", "table",       "log",
      "columns", "rate",    "from",      "to",        "history",     "write",       "papers",
      "units",   "date",    "beside",    "before",    "other_brake", "other_grade", "other_brakes"};
  for (const auto& [key, value] : json.items())
    if (std::find(std::begin(known), std::end(known), key) == std::end(known))
      refuse("unknown field of a request", key, value.dump().substr(0, 60),
             "version, command, stand, jobs, job, all, brief, brake, grade, brakes, tolerance, scenario, compare, "
             "idlers, threads, method, readings, recording, instruction, table, write, log, columns, "
             "rate, from, to, history, papers, units, date, beside, before, other_brake, other_grade, other_brakes");
}

Request read(const Json& json) {
  if (!json.is_object()) refuse("a request is a JSON object", "", json.dump().substr(0, 60), R"({"version": 1, …})");
  refuse_unknown_keys(json);
  if (json.value("version", Json(version)) != Json(version))
    refuse("this version of a request is not known", "version", json["version"].dump(), std::to_string(version));
  Request request;
  request.command = text_field(json, "command", "");
  const bool alone = request.command == "measure" || request.command == "history";
  if (!json.contains("stand") && !alone)
    refuse("a request needs a stand file", "stand", "", R"({"name": …, "text": …})");
  if (json.contains("stand")) request.stand = source(json, "stand");
  read_on_site(json, request);
  if (json.contains("jobs")) request.jobs = source(json, "jobs");
  request.job = text_field(json, "job", "");
  if (json.contains("all")) request.all = truth(json["all"], "all");
  if (json.contains("brief")) request.brief = truth(json["brief"], "brief");
  request.brake = optional_text(json, "brake");
  request.grade = optional_text(json, "grade");
  if (json.contains("brakes")) request.brakes = whole_number(json, "brakes", 1, 1000);
  request.scenario = text_field(json, "scenario", "");
  if (json.contains("compare")) request.compare = controls(json["compare"]);
  if (json.contains("idlers")) request.idlers = idlers(text_field(json, "idlers", ""));
  if (json.contains("threads")) request.threads = whole_number(json, "threads", 0, 1024);
  if (json.contains("tolerance")) {
    const std::string text = text_field(json, "tolerance", "");
    const units::Parsed parsed = units::parse(text, Quantity::ratio);
    if (const auto* fault = std::get_if<units::Fault>(&parsed)) refuse(fault->what, "tolerance", text, fault->accepted);
    request.tolerance = std::get<double>(parsed);
  }
  return request;
}

std::vector<papers::Kind> kinds(const Json& value) {
  if (!value.is_array()) refuse("a list of papers is due here", "papers", value.dump().substr(0, 60), paper_words);
  std::vector<papers::Kind> kinds;
  for (const Json& one : value) {
    const auto kind = one.is_string() ? paper_called(one.get<std::string>()) : std::nullopt;
    if (!kind) refuse("no such paper", "papers", one.dump().substr(0, 60), paper_words);
    kinds.push_back(*kind);
  }
  return kinds;
}

units::System system_of(const std::string& word) {
  if (word == "us") return units::System::us;
  if (!word.empty() && word != "si") refuse("no such system of units", "units", word, "si, us");
  return units::System::si;
}

PapersRequest papers_of(const Json& json, Request base) {
  PapersRequest request;
  request.base = std::move(base);
  request.date = text_field(json, "date", "");
  request.system = system_of(text_field(json, "units", ""));
  if (json.contains("papers")) request.kinds = kinds(json["papers"]);
  if (json.contains("beside")) request.beside = source(json, "beside");
  if (json.contains("before")) request.before = source(json, "before");
  request.other_brake = optional_text(json, "other_brake");
  request.other_grade = optional_text(json, "other_grade");
  if (json.contains("other_brakes")) request.other_brakes = whole_number(json, "other_brakes", 1, 1000);
  return request;
}

std::string refused(Outcome outcome, const Problem& problem) {
  Answer answer;
  answer.outcome = outcome;
  answer.problems.push_back(problem);
  return report::json(answer);
}

}  // namespace

std::variant<Request, Problem> read_request(std::string_view request_json) {
  try {
    return read(Json::parse(request_json));
  } catch (const BadRequest& bad) {
    return bad.problem;
  } catch (const Json::parse_error& error) {
    Problem problem;
    problem.what = {"the request is not JSON: " + std::string(error.what())};
    problem.file = "request";
    return problem;
  }
}

std::string answer(std::string_view request_json) {
  try {
    auto request = read_request(request_json);
    if (const auto* problem = std::get_if<Problem>(&request)) return refused(Outcome::bad_input, *problem);
    auto& asked = std::get<Request>(request);
    if (asked.command == "papers") return json(make_papers(papers_of(Json::parse(request_json), std::move(asked))));
    return report::json(answer(asked));
  } catch (const BadRequest& bad) {
    return refused(Outcome::bad_input, bad.problem);
  } catch (const std::exception& error) {
    Problem problem;
    problem.what = {"a fault of Holdback itself: " + std::string(error.what())};
    return refused(Outcome::internal, problem);
  }
}

}  // namespace holdback::api
