#include "holdback/api/on_site.hpp"

namespace holdback::api {

void diagnose(const Stand& stand, const Request& /*request*/, Answer& answer) {
  answer.diagnosis.emplace();
  answer.diagnosis->title = stand.title;
}

}  // namespace holdback::api
