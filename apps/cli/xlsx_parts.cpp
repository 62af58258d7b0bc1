#include "xlsx_parts.hpp"

#include <fmt/format.h>
#include <zip.h>

#include <algorithm>
#include <array>

namespace holdback::cli {

namespace {

constexpr auto workbook_wanted = "a workbook saved as .xlsx, or the sheet as CSV";

std::string megabytes(std::size_t bytes) { return fmt::format("{} MB", bytes >> 20U); }

/// What libzip says of an error, with its memory given back.
std::string words_of(zip_error_t* error) {
  std::string words = zip_error_strerror(error);
  zip_error_fini(error);
  return words;
}

zip_int64_t index_of(zip* archive, const std::string& part) {
  const auto exact = zip_name_locate(archive, part.c_str(), ZIP_FL_ENC_GUESS);
  return exact >= 0 ? exact : zip_name_locate(archive, part.c_str(), ZIP_FL_NOCASE);
}

struct CloseEntry {
  void operator()(zip_file_t* file) const { zip_fclose(file); }
};

}  // namespace

bool is_zip(std::string_view bytes) { return bytes.substr(0, 4) == std::string_view("PK\x03\x04", 4); }

bool is_ole(std::string_view bytes) {
  return bytes.substr(0, 8) == std::string_view("\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1", 8);
}

WorkbookFile::WorkbookFile(std::string_view bytes) {
  if (bytes.size() > most_packed)
    throw Unreadable(fmt::format("the workbook is larger than {}", megabytes(most_packed)), workbook_wanted);
  zip_error_t error;
  zip_error_init(&error);
  zip_source_t* source = zip_source_buffer_create(bytes.data(), bytes.size(), 0, &error);
  if (source == nullptr) throw Unreadable("the workbook cannot be opened: " + words_of(&error), workbook_wanted);
  archive_ = zip_open_from_source(source, ZIP_RDONLY, &error);
  if (archive_ == nullptr) {
    zip_source_free(source);
    throw Unreadable("the file begins as a workbook but is damaged: " + words_of(&error), workbook_wanted);
  }
  zip_error_fini(&error);
}

WorkbookFile::~WorkbookFile() { zip_discard(archive_); }

bool WorkbookFile::has(const std::string& part) const { return index_of(archive_, part) >= 0; }

std::string WorkbookFile::unpacked(const std::string& part) {
  const auto index = index_of(archive_, part);
  if (index < 0) throw Unreadable(fmt::format("the workbook has no part {}", part), workbook_wanted);
  zip_stat_t about;
  zip_stat_init(&about);
  const auto at = static_cast<zip_uint64_t>(index);
  if (zip_stat_index(archive_, at, 0, &about) == 0 && (about.valid & ZIP_STAT_ENCRYPTION_METHOD) != 0 &&
      about.encryption_method != ZIP_EM_NONE)
    throw Unreadable("the workbook is encrypted", "a workbook without a password");
  const std::unique_ptr<zip_file_t, CloseEntry> file(zip_fopen_index(archive_, at, 0));
  if (!file)
    throw Unreadable(fmt::format("part {} cannot be unpacked: {}", part, zip_strerror(archive_)), workbook_wanted);
  std::string text;
  std::array<char, 65536> chunk{};
  for (;;) {  // what comes out is counted; what the header says of its size is not believed
    const auto got = zip_fread(file.get(), chunk.data(), chunk.size());
    if (got < 0)
      throw Unreadable(fmt::format("part {} is damaged: {}", part, zip_file_strerror(file.get())), workbook_wanted);
    if (got == 0) return text;
    text.append(chunk.data(), static_cast<std::size_t>(got));
    total_ += static_cast<std::size_t>(got);
    if (text.size() > most_of_a_part || total_ > most_unpacked)
      throw Unreadable(fmt::format("part {} unpacks to more than {}", part,
                                   megabytes(text.size() > most_of_a_part ? most_of_a_part : most_unpacked)),
                       "a workbook with the jobs alone");
  }
}

XmlPart WorkbookFile::xml(const std::string& part) {
  XmlPart xml;
  xml.text = unpacked(part);
  if (static_cast<std::size_t>(std::count(xml.text.begin(), xml.text.end(), '<')) > most_tags)
    throw Unreadable(fmt::format("part {} has more than {} million tags", part, most_tags / 1'000'000),
                     "a workbook with the jobs alone");
  // Blanks count in a text run. Document types are passed over: no entity of theirs is ever expanded.
  constexpr unsigned how = pugi::parse_default | pugi::parse_ws_pcdata_single;
  const auto done = xml.document->load_buffer_inplace(xml.text.data(), xml.text.size(), how);
  if (!done)
    throw Unreadable(fmt::format("part {} is not well formed: {} at byte {}", part, done.description(), done.offset),
                     workbook_wanted);
  return xml;
}

std::string_view local_name(const char* name) {
  const std::string_view whole(name);
  const auto colon = whole.rfind(':');
  return colon == std::string_view::npos ? whole : whole.substr(colon + 1);
}

std::vector<pugi::xml_node> children(const pugi::xml_node& node, std::string_view name) {
  std::vector<pugi::xml_node> found;
  for (const auto& each : node.children())
    if (local_name(each.name()) == name) found.push_back(each);
  return found;
}

pugi::xml_node child(const pugi::xml_node& node, std::string_view name) {
  for (const auto& each : node.children())
    if (local_name(each.name()) == name) return each;
  return {};
}

std::string attribute(const pugi::xml_node& node, std::string_view name, bool prefixed) {
  for (const auto& each : node.attributes())
    if (local_name(each.name()) == name && (std::string_view(each.name()).size() > name.size()) == prefixed)
      return each.value();
  return {};
}

std::string text_in(const pugi::xml_node& node) {
  std::string text;
  for (const auto& each : node.children())
    if (each.type() == pugi::node_pcdata || each.type() == pugi::node_cdata) text += each.value();
  return text;
}

}  // namespace holdback::cli
