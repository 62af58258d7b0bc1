// A fault of what was asked, rather than of a file.
#pragma once

#include <string>

#include "holdback/model/problem.hpp"

namespace holdback::api {

/// What is wrong with a field of the request or an option of the call, the value it has, and what would be accepted.
Problem request_problem(std::string what, std::string field, std::string value, std::string accepted);

}  // namespace holdback::api
