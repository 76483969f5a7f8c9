// SHA-256 of a file, read in pieces. Only way in: sha256_of. Tested in tests/engine/picture/sha256.test.cpp.
#include "engine/picture/facts.h"
#include "engine/picture/faults.h"
#include "engine/picture/picture_file.h"

#include <array>
#include <cerrno>
#include <fmt/format.h>
#include <memory>
#include <openssl/evp.h>
#include <vector>

namespace stoneproof {

Outcome<std::string> sha256_of(const std::filesystem::path &path) {
  auto opened = PictureFile::open(path);
  if (!opened) return opened.fault();
  const PictureFile &file = opened.value();
  const std::unique_ptr<EVP_MD_CTX, decltype(&EVP_MD_CTX_free)> digest(EVP_MD_CTX_new(), EVP_MD_CTX_free);
  bool sound = digest && EVP_DigestInit_ex(digest.get(), EVP_sha256(), nullptr) == 1;
  std::vector<std::uint8_t> piece(256 * 1024);
  std::uint64_t done = 0;
  while (sound && done < file.size()) {
    const std::size_t got = file.read_at(done, piece.data(), piece.size());
    if (got == 0) return faults::cannot_open(path, EIO);
    sound = EVP_DigestUpdate(digest.get(), piece.data(), got) == 1;
    done += got;
  }
  std::array<unsigned char, EVP_MAX_MD_SIZE> bytes{};
  unsigned length = 0;
  if (!sound || EVP_DigestFinal_ex(digest.get(), bytes.data(), &length) != 1)
    return faults::cannot_open(path, ENOMEM);
  std::string text;
  for (unsigned i = 0; i < length; ++i) text += fmt::format("{:02x}", bytes[i]);
  return text;
}

} // namespace stoneproof
