// What other libraries forget of their own accord: the encoder that writes HEIC for the tests, and the AV1
// decoder when a picture is given up halfway.
#ifdef __SANITIZE_ADDRESS__
extern "C" const char *__lsan_default_suppressions() { return "leak:libx265\nleak:libdav1d\n"; }
#endif

#if CATCH_MAJOR >= 3
#include <catch2/catch_session.hpp>
int main(int argc, char *argv[]) { return Catch::Session().run(argc, argv); }
#else
#define CATCH_CONFIG_MAIN
#include <catch2/catch.hpp>
#endif
