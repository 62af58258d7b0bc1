#include "holdback/api/on_site.hpp"

namespace holdback::api {

void fit(const Stand& stand, const Request& /*request*/, Answer& answer) {
  answer.fit.emplace();
  answer.fit->title = stand.title;
}

}  // namespace holdback::api
