% Margins of an unwind's loops, for cases/control_unwind.txt: GNU Octave with its control package.
%   octave-cli --quiet margins_reference.m
% Plant by states: roll speed and tension, J w' = T R - M - D w, L T' = -E R w - v T, E = EA - T0, from M to T; then the
% air 1/(tau s + 1) and a PI controller of the torque over the tension. With dead time and sample-and-hold the loop has
% no states: there the crossings of the frequency response are solved for.
1;
pkg load control
printf("Octave %s, control %s\n", version(), pkg("list", "control"){1}.version);

function L = plant(J, R, Ls, EA, v, T0, D)
  E = EA - T0;
  A = [-D/J, R/J; -E*R/Ls, -v/Ls];
  L = ss(A, [-1/J; 0], [0, 1], 0);
endfunction

function show(name, J, R, Ls, EA, v, T0, D, K, Ti, tau)
  loop = plant(J, R, Ls, EA, v, T0, D) * tf(1, [tau, 1]) * tf(K*[Ti, 1], [Ti, 0]);
  [gm, pm, wg, wp] = margin(loop);
  printf("%s: gm %.9g at %.9g, pm %.9g deg at %.9g\n", name, gm, wg, pm, wp);
endfunction

function z = response(w, J, R, Ls, EA, v, T0, D, K, Ti, tau, theta, T)
  s = 1i*w;
  E = EA - T0;
  z = K*(1 + 1/(Ti*s)) * E*R/((J*s + D)*(Ls*s + v) + E*R^2) * exp(-s*theta)/(tau*s + 1) * (1 - exp(-s*T))/(s*T);
endfunction

function cross(name, low, high, varargin)
  w = logspace(log10(low), log10(high), 20000);
  z = arrayfun(@(x) response(x, varargin{:}), w);
  options = optimset("TolX", 1e-14);
  printf("%s:\n", name);
  g = abs(z) - 1;
  for k = find(g(1:end-1) .* g(2:end) < 0)
    x = fzero(@(x) abs(response(x, varargin{:})) - 1, [w(k), w(k+1)], options);
    printf("  |L| = 1 at %.10g, pm %.10g deg\n", x, arg(-response(x, varargin{:}))*180/pi);
  endfor
  for k = find(imag(z(1:end-1)) .* imag(z(2:end)) < 0 & real(z(1:end-1)) < 0)
    x = fzero(@(x) imag(response(x, varargin{:})), [w(k), w(k+1)], options);
    printf("  L < 0 at %.10g, gm %.10g\n", x, -1/real(response(x, varargin{:})));
  endfor
  [peak, k] = max(1 ./ abs(1 + z));
  x = fminbnd(@(x) abs(1 + response(x, varargin{:})), w(max(k-1, 1)), w(min(k+1, end)), optimset("TolX", 1e-12));
  printf("  Ms %.9g at %.6g\n", 1/abs(1 + response(x, varargin{:})), x);
endfunction

show("A full roll, slow loop", 32.6184369187, 0.40, 3, 2e5, 5, 0, 0, 0.02, 0.5, 0.1);
show("B near the core", 1.2, 0.12, 3, 2e5, 5, 50, 0.4, 0.012, 0.15, 0.1);
cross("C full roll, dead time 40 ms, hold 10 ms", 1e-3, 300, 32.6184369187, 0.40, 3, 2e5, 5, 0, 0, 0.02, 0.5, 0.1, 0.04, 0.01);
cross("D near the core, dead time 40 ms, hold 10 ms", 1e-3, 300, 1.2, 0.12, 3, 2e5, 5, 50, 0.4, 0.012, 0.15, 0.1, 0.04, 0.01);
