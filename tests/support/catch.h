// One include for Catch2 2.13 (Debian 12) and 3.x (Debian 13).
#pragma once

#if CATCH_MAJOR >= 3
#include <catch2/catch_all.hpp>
using Catch::Approx;
#else
#include <catch2/catch.hpp>
#endif
