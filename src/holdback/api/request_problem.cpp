#include "holdback/api/request_problem.hpp"

#include <utility>

namespace holdback::api {

Problem request_problem(std::string what, std::string field, std::string value, std::string accepted) {
  Problem problem;
  problem.what = {std::move(what)};
  problem.field = std::move(field);
  problem.value = std::move(value);
  problem.accepted = {std::move(accepted)};
  return problem;
}

}  // namespace holdback::api
