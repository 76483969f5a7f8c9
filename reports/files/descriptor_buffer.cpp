// Puts a stream's bytes into a file descriptor. The only way in is DescriptorBuffer; tested in
// tests/reports/files/replace_file.test.cpp.
#include "reports/files/descriptor_buffer.h"

#include <cerrno>
#include <unistd.h>

namespace stoneproof {

DescriptorBuffer::DescriptorBuffer(int descriptor) : descriptor_(descriptor) {
  setp(pending_.data(), pending_.data() + pending_.size());
}

bool DescriptorBuffer::send(const char *bytes, std::size_t count) {
  while (count > 0 && error_ == 0) {
    const ssize_t sent = ::write(descriptor_, bytes, count);
    if (sent < 0) {
      if (errno != EINTR) error_ = errno;
      continue;
    }
    bytes += sent;
    count -= static_cast<std::size_t>(sent);
  }
  return error_ == 0;
}

bool DescriptorBuffer::send_pending() {
  const bool sent = send(pbase(), static_cast<std::size_t>(pptr() - pbase()));
  setp(pending_.data(), pending_.data() + pending_.size());
  return sent;
}

DescriptorBuffer::int_type DescriptorBuffer::overflow(int_type c) {
  if (!send_pending()) return traits_type::eof();
  if (!traits_type::eq_int_type(c, traits_type::eof())) {
    *pptr() = traits_type::to_char_type(c);
    pbump(1);
  }
  return traits_type::not_eof(c);
}

// Large pieces, pictures above all, go past the buffer.
std::streamsize DescriptorBuffer::xsputn(const char *bytes, std::streamsize count) {
  if (count < epptr() - pptr()) {
    traits_type::copy(pptr(), bytes, static_cast<std::size_t>(count));
    pbump(static_cast<int>(count));
    return count;
  }
  return send_pending() && send(bytes, static_cast<std::size_t>(count)) ? count : 0;
}

int DescriptorBuffer::sync() { return send_pending() ? 0 : -1; }

DescriptorBuffer::pos_type DescriptorBuffer::seekoff(off_type offset, std::ios_base::seekdir from,
                                                     std::ios_base::openmode) {
  if (!send_pending()) return pos_type(off_type(-1));
  const int whence = from == std::ios_base::beg ? SEEK_SET : from == std::ios_base::cur ? SEEK_CUR : SEEK_END;
  return pos_type(lseek(descriptor_, offset, whence));
}

DescriptorBuffer::pos_type DescriptorBuffer::seekpos(pos_type position, std::ios_base::openmode mode) {
  return seekoff(off_type(position), std::ios_base::beg, mode);
}

} // namespace stoneproof
