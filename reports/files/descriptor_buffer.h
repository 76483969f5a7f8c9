// A stream buffer over a POSIX file descriptor that remembers why a write failed.
#pragma once

#include <array>
#include <streambuf>

namespace stoneproof {

/// Write only. Does not own the descriptor. After a failed write nothing more is written.
class DescriptorBuffer : public std::streambuf {
public:
  explicit DescriptorBuffer(int descriptor);
  /// The errno of the first write that failed; 0 while all went well. Complete only after pubsync().
  int error() const { return error_; }

protected:
  int_type overflow(int_type c) override;
  std::streamsize xsputn(const char *bytes, std::streamsize count) override;
  int sync() override;
  pos_type seekoff(off_type offset, std::ios_base::seekdir from, std::ios_base::openmode mode) override;
  pos_type seekpos(pos_type position, std::ios_base::openmode mode) override;

private:
  bool send(const char *bytes, std::size_t count);
  bool send_pending();

  int descriptor_;
  int error_ = 0;
  std::array<char, 1 << 16> pending_;
};

} // namespace stoneproof
