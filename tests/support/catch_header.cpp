// Gives the precompiled header a source to belong to.
#include "tests/support/catch.h"
