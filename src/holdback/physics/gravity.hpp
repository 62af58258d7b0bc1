// The pull of the earth.
#pragma once

namespace holdback::physics {

inline constexpr double gravity = 9.80665;  // [m/s²] standard acceleration of free fall, 3rd CGPM (1901)

}  // namespace holdback::physics
