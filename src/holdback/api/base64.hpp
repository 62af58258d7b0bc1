// Bytes in JSON.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace holdback::api {

/// The bytes of a text in base64 (RFC 4648, section 4), blanks and line ends passed over; none when it is not that.
std::optional<std::string> bytes_of_base64(std::string_view text);

}  // namespace holdback::api
