// HOLDBACK_SERIAL: a build without threads, as for the browser.
#pragma once

#if defined(__EMSCRIPTEN__) && !defined(HOLDBACK_SERIAL)
#define HOLDBACK_SERIAL
#endif
