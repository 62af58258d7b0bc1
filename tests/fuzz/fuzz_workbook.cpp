// Generated workbooks: whole archives, and, since few bytes make an archive, the XML of a worksheet alone. Whatever
// comes out is read as a table of jobs. Refusals are well; anything else that is thrown is a defect.
#include <cstddef>
#include <cstdint>
#include <pugixml.hpp>
#include <string>

#include "holdback/files/stand_file.hpp"
#include "xlsx_parts.hpp"
#include "xlsx_read.hpp"
#include "xlsx_sheet.hpp"

namespace {

void read_table(const std::string& text) {
  holdback::files::StandFile stand;
  holdback::files::read_jobs(text, "fuzz.xlsx", stand, true);
}

void read_sheet(const std::string& xml) {
  pugi::xml_document document;
  if (!document.load_buffer(xml.data(), xml.size())) return;
  const holdback::cli::Shared shared{true, {"Job", "Speed (m/min)", "a,\"b\"\nc"}, {1}};
  try {
    read_table(holdback::cli::sheet_as_csv(holdback::cli::child(document, "worksheet"), shared));
  } catch (const holdback::cli::Unreadable&) {  // told as a problem
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string bytes(reinterpret_cast<const char*>(data), size);
  const auto table = holdback::cli::jobs_table({"fuzz.xlsx", bytes}, "");
  if (const auto* source = std::get_if<holdback::api::Source>(&table)) read_table(source->text);
  read_sheet(bytes);
  return 0;
}
