// SHA-256 of a file, read in pieces, and of a text. Only ways in: sha256_of, sha256_of_text. Tested in
// tests/engine/picture/files.test.cpp.
#include "engine/picture/facts.h"
#include "engine/picture/faults.h"
#include "engine/picture/picture_file.h"

#include <array>
#include <cerrno>
#include <fmt/format.h>
#include <memory>
#include <new>
#include <openssl/evp.h>
#include <vector>

namespace stoneproof {

namespace {

using Digest = std::array<unsigned char, EVP_MAX_MD_SIZE>;

std::string hexadecimal(const Digest &bytes, unsigned length) {
  std::string text;
  for (unsigned i = 0; i < length; ++i) text += fmt::format("{:02x}", bytes[i]);
  return text;
}

} // namespace

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
  Digest bytes{};
  unsigned length = 0;
  if (!sound || EVP_DigestFinal_ex(digest.get(), bytes.data(), &length) != 1)
    return faults::cannot_open(path, ENOMEM);
  return hexadecimal(bytes, length);
}

std::string sha256_of_text(std::string_view text) {
  Digest bytes{};
  unsigned length = 0;
  if (EVP_Digest(text.data(), text.size(), bytes.data(), &length, EVP_sha256(), nullptr) != 1)
    throw std::bad_alloc(); // all that can fail here
  return hexadecimal(bytes, length);
}

} // namespace stoneproof
