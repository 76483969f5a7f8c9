// The door through which libFuzzer comes in; STONEPROOF_HARNESS names the function of harnesses.h.
#include "tests/fuzz/harnesses.h"

#include <cstddef>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *data, std::size_t size);

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *data, std::size_t size) {
  stoneproof::fuzz::STONEPROOF_HARNESS({data, size});
  return 0;
}
