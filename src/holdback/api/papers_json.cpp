// Papers as JSON, for the page and for scripts.
#include <algorithm>
#include <nlohmann/json.hpp>

#include "holdback/api/papers.hpp"
#include "holdback/draw/svg.hpp"
#include "holdback/report/report.hpp"

namespace holdback::api {

namespace {

using Json = nlohmann::ordered_json;

std::string_view key_of(papers::Tone tone) {
  constexpr std::string_view keys[]{"normal", "strong", "muted"};
  return keys[static_cast<std::size_t>(tone)];
}

Json json_of(const papers::Heading& block) {
  return {{"block", "heading"}, {"text", block.text}, {"level", block.level}};
}
Json json_of(const papers::Paragraph& block) {
  return {{"block", "paragraph"}, {"text", block.text}, {"tone", key_of(block.tone)}};
}
Json json_of(const papers::Items& block) {
  return {{"block", "items"}, {"items", block.items}, {"numbered", block.numbered}};
}
Json json_of(const papers::Facts& block) {
  Json facts = Json::array();
  for (const auto& fact : block.facts) facts.push_back({{"label", fact.label}, {"value", fact.value}});
  return {{"block", "facts"}, {"facts", facts}, {"columns", block.columns}, {"large", block.large}};
}
Json json_of(const papers::Cell& cell) {
  Json json{{"text", cell.text}};
  if (cell.tone != papers::Tone::normal) json["tone"] = key_of(cell.tone);
  if (cell.has_state) json["state"] = holdback::key_of(cell.state);
  return json;
}
Json json_of(const papers::Table& block) {
  Json columns = Json::array();
  for (const auto& column : block.columns)
    columns.push_back({{"head", column.head}, {"unit", column.unit}, {"number", column.number}});
  Json rows = Json::array();
  for (const auto& row : block.rows) {
    Json cells = Json::array();
    for (const auto& cell : row) cells.push_back(json_of(cell));
    rows.push_back(std::move(cells));
  }
  return {{"block", "table"},        {"caption", block.caption},       {"columns", std::move(columns)},
          {"rows", std::move(rows)}, {"row_height", block.row_height}, {"large", block.large}};
}
Json json_of(const papers::Figure& block) {
  return {{"block", "figure"},
          {"title", block.scene.title},
          {"description", block.scene.description},
          {"svg", draw::svg(block.scene)},
          {"share", block.share}};
}
Json json_of(const papers::Equation& block) {
  return {{"block", "equation"},    {"name", block.name},     {"id", block.id},        {"formula", block.formula},
          {"put_in", block.put_in}, {"result", block.result}, {"source", block.source}};
}
Json json_of(const papers::Warning& block) {
  return {{"block", "warning"}, {"signal", papers::word_of(block.signal)}, {"text", block.text}};
}
Json json_of(const papers::Verdict& block) {
  return {{"block", "verdict"}, {"state", holdback::key_of(block.state)}, {"text", block.text}};
}
Json json_of(const papers::PageBreak& /*unused*/) { return {{"block", "page_break"}}; }

Json json_of(const papers::Paper& paper) {
  Json blocks = Json::array();
  for (const auto& block : paper.blocks)
    blocks.push_back(std::visit([](const auto& each) { return json_of(each); }, block));
  return {{"kind", papers::key_of(paper.kind)}, {"file", paper.file}, {"title", paper.title},
          {"subject", paper.subject},           {"date", paper.date}, {"cover", paper.cover},
          {"one_page", paper.one_page},         {"size", paper.size}, {"blocks", std::move(blocks)}};
}

}  // namespace

std::string json(const PaperSet& set) {
  // Outcome and problems as in any other answer; the choice itself is asked for by size.
  Answer answer;
  answer.command = set.answer.command;
  answer.outcome = set.answer.outcome;
  answer.problems = set.answer.problems;
  answer.defaults = set.answer.defaults;
  Json json = Json::parse(report::json(answer));
  json["papers"] = Json::array();
  for (const auto& paper : set.papers) json["papers"].push_back(json_of(paper));
  json["attachments"] = Json::array();
  for (const auto& one : set.attachments) json["attachments"].push_back({{"file", one.file}, {"text", one.text}});
  return json.dump(-1, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace holdback::api
