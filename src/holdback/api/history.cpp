#include "holdback/api/on_site.hpp"

namespace holdback::api {

void history(const Stand* /*stand*/, const Request& request, Answer& answer) {
  answer.history.emplace();
  answer.history->stand = request.history->entries.name;
}

}  // namespace holdback::api
