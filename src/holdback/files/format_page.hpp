// The field table as a page for people.
#pragma once

#include <string>

namespace holdback::files {

/// docs/file-format.md: how a stand file and a table of jobs are written, every key with kind, default, accepted values
/// and meaning, and the units of every kind of quantity.
std::string file_format_page();

}  // namespace holdback::files
