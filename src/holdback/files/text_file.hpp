// A text as a host hands it over: is it text at all, and which are its lines. Columns count characters, not bytes.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "holdback/model/problem.hpp"

namespace holdback::files {

/// The lines without their ends (LF or CRLF), for messages.
std::vector<std::string> lines_of(std::string_view text);

/// The text without a UTF-8 byte order mark.
std::string_view without_mark(std::string_view text);

/// Why a text of more than `largest` bytes, in another encoding, with zero bytes or without content is not read; file
/// and position are set. `what` says what is wanted: "a stand file".
std::optional<Problem> unreadable(std::string_view text, std::size_t largest, const std::string& what,
                                  const std::string& file);

/// Bytes of the UTF-8 character that starts at `at`; 0 when there is none.
std::size_t character_size(std::string_view text, std::size_t at);

/// Number of characters.
std::size_t length_of(std::string_view text);

/// Characters `first` to before `last` of a line, counted from one.
std::string slice(std::string_view line, int first, int last);

/// Without blanks and tabs at both ends.
std::string_view trimmed(std::string_view text);

/// Fit for a message: at most 60 characters of one line, the rest as "…"; control characters as U+FFFD.
std::string clipped(std::string_view text);

}  // namespace holdback::files
