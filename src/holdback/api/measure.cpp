#include "holdback/api/on_site.hpp"

namespace holdback::api {

void measure(const Stand* /*stand*/, const Request& request, Answer& answer) {
  answer.measurement.emplace();
  answer.measurement->method = request.measure->method;
}

}  // namespace holdback::api
