// Where a function crosses zero, and where a yes turns into a no.
#pragma once

#include <functional>

namespace holdback::numerics {

/// x between `low` and `high` with f(x) = 0, found to `tolerance` > 0 (absolute, in x).
/// Rules: f is finite and continuous on the interval and f(low), f(high) differ in sign or one is zero, else
/// std::invalid_argument; with several roots any one of them may be returned. Method: Boost.Math toms748 (Alefeld,
/// Potra and Shi), at most 200 evaluations.
double find_root(const std::function<double(double)>& f, double low, double high, double tolerance);

/// The last value that still passes, between `passes`, where `predicate` is known to be true, and `fails`, where it is
/// known to be false; either may be the greater. Bisection until the two lie closer than `relative_tolerance` times the
/// larger magnitude (or 200 halvings); the returned value itself passes. The ends are not evaluated again. With several
/// changes between the ends one of them is found.
double find_boundary(const std::function<bool(double)>& predicate, double passes, double fails,
                     double relative_tolerance);

}  // namespace holdback::numerics
