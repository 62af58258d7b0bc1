#include "xlsx_read.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <new>

#include "xlsx_parts.hpp"
#include "xlsx_sheet.hpp"

namespace holdback::cli {

namespace {

using pugi::xml_node;

constexpr auto xlsx_wanted = "a workbook saved as .xlsx, or the sheet as CSV";

/// A part that another one refers to.
struct Relation {
  std::string id{};
  std::string type{};  // last word of its type: "worksheet"
  std::string part{};
};

/// "xl/workbook.xml" + "worksheets/sheet1.xml" → "xl/worksheets/sheet1.xml"; "/xl/a.xml" → "xl/a.xml".
std::string part_from(const std::string& base, const std::string& target) {
  if (!target.empty() && target[0] == '/') return target.substr(1);
  std::string folder = base.substr(0, base.rfind('/') == std::string::npos ? 0 : base.rfind('/') + 1);
  std::string rest = target;
  while (rest.compare(0, 3, "../") == 0) {
    rest.erase(0, 3);
    const auto above = folder.size() < 2 ? std::string::npos : folder.rfind('/', folder.size() - 2);
    folder.resize(above == std::string::npos ? 0 : above + 1);
  }
  return folder + (rest.compare(0, 2, "./") == 0 ? rest.substr(2) : rest);
}

std::vector<Relation> relations_of(WorkbookFile& file, const std::string& part) {
  const auto slash = part.rfind('/');
  const std::size_t name = slash == std::string::npos ? 0 : slash + 1;
  const std::string list = part.substr(0, name) + "_rels/" + part.substr(name) + ".rels";
  std::vector<Relation> relations;
  if (!file.has(list)) return relations;
  const XmlPart xml = file.xml(list);
  for (const auto& each : children(child(*xml.document, "Relationships"), "Relationship")) {
    const std::string type = attribute(each, "Type");
    relations.push_back(
        {attribute(each, "Id"), type.substr(type.rfind('/') + 1), part_from(part, attribute(each, "Target"))});
  }
  return relations;
}

const Relation* find_type(const std::vector<Relation>& relations, const std::string& type) {
  const auto found =
      std::find_if(relations.begin(), relations.end(), [&](const Relation& each) { return each.type == type; });
  return found == relations.end() ? nullptr : &*found;
}

std::string small_letters(std::string text) {
  for (char& c : text) c = static_cast<char>(c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c);
  return text;
}

class Workbook {
 public:
  explicit Workbook(WorkbookFile& file) : file_(file) {
    const auto roots = relations_of(file_, "");
    const Relation* main = find_type(roots, "officeDocument");
    main_ = main != nullptr ? main->part : "xl/workbook.xml";
    if (!file_.has(main_)) refuse_other_files();
    if (main_.size() > 4 && main_.substr(main_.size() - 4) == ".bin")
      throw Unreadable("the workbook is saved in the binary form (.xlsb)", xlsx_wanted);
    relations_ = relations_of(file_, main_);
  }

  std::string read(const std::string& wanted) {
    const std::string part = part_of_sheet(wanted);
    const Shared shared{find_type(relations_, "sharedStrings") != nullptr, texts(), per_cent_styles()};
    const XmlPart sheet = file_.xml(part);
    return sheet_as_csv(child(*sheet.document, "worksheet"), shared);
  }

 private:
  [[noreturn]] void refuse_other_files() {
    if (file_.has("content.xml")) throw Unreadable("this is an OpenDocument file", xlsx_wanted);
    throw Unreadable("the file is an archive, but holds no workbook", xlsx_wanted);
  }

  /// The first worksheet that is shown, or the one of that name.
  std::string part_of_sheet(const std::string& wanted) {
    const XmlPart xml = file_.xml(main_);
    std::string names;
    std::string near;
    for (const auto& sheet : children(child(child(*xml.document, "workbook"), "sheets"), "sheet")) {
      const std::string part = worksheet_part(attribute(sheet, "id", true));
      if (part.empty()) continue;  // a sheet of a chart
      const std::string name = attribute(sheet, "name");
      const bool hidden = !attribute(sheet, "state").empty() && attribute(sheet, "state") != "visible";
      if (wanted.empty() ? !hidden : name == wanted) return part;
      if (near.empty() && small_letters(name) == small_letters(wanted)) near = part;
      names += (names.empty() ? "" : ", ") + clean(name);
    }
    if (!near.empty()) return near;
    if (wanted.empty())
      throw Unreadable("the workbook shows no worksheet",
                       names.empty() ? xlsx_wanted : "--sheet with one of: " + names);
    throw Unreadable(fmt::format("the workbook has no sheet \"{}\"", wanted),
                     names.empty() ? xlsx_wanted : "one of: " + names);
  }

  std::string worksheet_part(const std::string& id) const {
    for (const Relation& each : relations_)
      if (each.id == id && each.type == "worksheet") return each.part;
    return {};
  }

  std::vector<std::string> texts() {
    std::vector<std::string> all;
    const Relation* part = find_type(relations_, "sharedStrings");
    if (part == nullptr) return all;
    const XmlPart xml = file_.xml(part->part);
    for (const auto& text : children(child(*xml.document, "sst"), "si")) all.push_back(rich_text(text));
    return all;
  }

  /// Styles whose number format shows per cent: 9 and 10 of the built-in ones, and those of the workbook's own.
  std::set<std::size_t> per_cent_styles() {
    std::set<std::size_t> styles;
    const Relation* part = find_type(relations_, "styles");
    if (part == nullptr) return styles;
    const XmlPart xml = file_.xml(part->part);
    const xml_node sheet = child(*xml.document, "styleSheet");
    std::set<std::string> formats{"9", "10"};
    for (const auto& format : children(child(sheet, "numFmts"), "numFmt"))
      if (shows_per_cent(attribute(format, "formatCode"))) formats.insert(attribute(format, "numFmtId"));
    std::size_t index = 0;
    for (const auto& style : children(child(sheet, "cellXfs"), "xf")) {
      if (formats.count(attribute(style, "numFmtId")) != 0) styles.insert(index);
      ++index;
    }
    return styles;
  }

  WorkbookFile& file_;
  std::string main_{};
  std::vector<Relation> relations_{};
};

std::string sheet_text(const std::string& bytes, const std::string& sheet) {
  WorkbookFile file(bytes);
  std::string text = Workbook(file).read(sheet);
  if (text.empty()) throw Unreadable("the sheet is empty", "a table of jobs: a header row, and a row for each job");
  return text;
}

bool ends_in(const std::string& name, const std::string& ending) {
  const std::string small = small_letters(name);
  return small.size() > ending.size() && small.substr(small.size() - ending.size()) == ending;
}

void check_kind(const api::Source& file, const std::string& sheet) {
  if (is_ole(file.text))
    throw Unreadable("the file is an old workbook (.xls) or one with a password",
                     "a workbook saved as .xlsx without a password, or the sheet as CSV");
  if (is_zip(file.text)) return;
  if (ends_in(file.name, ".xlsx") || ends_in(file.name, ".xlsm"))
    throw Unreadable("the file is no workbook, whatever its name says", xlsx_wanted);
  if (!sheet.empty()) throw Unreadable("--sheet names a sheet of a workbook, and this file is a text", "an .xlsx file");
}

}  // namespace

std::variant<api::Source, Problem> jobs_table(api::Source file, const std::string& sheet) {
  Problem problem;
  problem.file = file.name;
  try {
    check_kind(file, sheet);
    if (!is_zip(file.text)) return file;
    file.text = sheet_text(file.text, sheet);
    file.sheet = true;
    return file;
  } catch (const Unreadable& fault) {
    problem.what = {fault.what()};
    problem.accepted = {fault.accepted()};
    problem.where = fault.where();
  } catch (const std::bad_alloc&) {
    problem.what = {"the workbook needs more memory than there is"};
    problem.accepted = {"the jobs alone, on a sheet of their own"};
  }
  return problem;
}

}  // namespace holdback::cli
