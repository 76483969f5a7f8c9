// Pieces of a mask. The only ways in are those of picture_mask.h; tested in
// tests/engine/measure/bed_border.test.cpp.
#include "engine/measure/picture_mask.h"

#include <algorithm>
#include <cstring>

namespace stoneproof {

namespace {

/// Set pixels side by side in one row.
struct Run {
  int y, begin, end;
  std::size_t
      piece; ///< the index of a run that hangs together with it, never of a later one; at last, of the first
};

/// The runs of a mask, row after row, joined to pieces.
class Pieces {
public:
  explicit Pieces(const PictureMask &mask) : width_(mask.width), height_(mask.height) {
    for (int y = 0; y < mask.height; ++y) add_row(mask, y);
    for (Run &run : runs_) run.piece = runs_[run.piece].piece; // those before it know theirs
  }

  std::size_t count() const { return runs_.size(); }
  const std::vector<Run> &runs() const { return runs_; }

  /// Those whose piece, the index of its first run, is chosen.
  PictureMask mask_of(const std::vector<bool> &chosen) const {
    PictureMask mask(width_, height_);
    for (const Run &run : runs_)
      if (chosen[run.piece])
        std::fill(&mask.at(run.begin, run.y), &mask.at(run.begin, run.y) + (run.end - run.begin),
                  std::uint8_t{1});
    return mask;
  }

private:
  void add_row(const PictureMask &mask, int y) {
    const std::uint8_t *row = mask.set.data() + static_cast<std::ptrdiff_t>(y) * width_;
    std::size_t above = row_above_;
    row_above_ = runs_.size();
    const auto until = [&](int x, int value) {
      const void *at = std::memchr(row + x, value, static_cast<std::size_t>(width_ - x));
      return at ? static_cast<int>(static_cast<const std::uint8_t *>(at) - row) : width_;
    };
    for (int begin = until(0, 1); begin < width_;) {
      const int end = until(begin, 0);
      runs_.push_back({y, begin, end, runs_.size()});
      while (above < row_above_ && runs_[above].end <= begin) ++above;
      for (std::size_t touching = above; touching < row_above_ && runs_[touching].begin < end; ++touching)
        join(touching, runs_.size() - 1);
      begin = until(end, 1);
    }
  }

  std::size_t first_of(std::size_t run) {
    while (runs_[run].piece != run) run = runs_[run].piece = runs_[runs_[run].piece].piece;
    return run;
  }
  void join(std::size_t one, std::size_t other) {
    one = first_of(one), other = first_of(other);
    runs_[std::max(one, other)].piece = std::min(one, other);
  }

  int width_, height_;
  std::vector<Run> runs_;
  std::size_t row_above_ = 0; ///< the first run of the row before
};

/// One bit for each of five pixels: the least is their AND, the largest their OR.
template <class Join>
void join_five(const std::uint8_t *in, std::uint8_t *out, std::ptrdiff_t apart, std::ptrdiff_t count,
               Join join) {
  for (std::ptrdiff_t i = 0; i < count; ++i)
    out[i] =
        join(join(join(in[i - 2 * apart], in[i - apart]), in[i]), join(in[i + apart], in[i + 2 * apart]));
}

/// Each pixel becomes the least, or the largest, of the 5 x 5 round it; those at the edge go on beyond it.
template <class Join>
PictureMask of_square(const PictureMask &mask, Join join) {
  constexpr int reach = 2;
  const auto width = static_cast<std::ptrdiff_t>(mask.width), padded = width + 2 * reach;
  PictureMask out(mask.width, mask.height);
  std::vector<std::uint8_t> row(static_cast<std::size_t>(padded));
  std::vector<std::uint8_t> across(static_cast<std::size_t>(width) *
                                   static_cast<std::size_t>(mask.height + 2 * reach));
  for (int y = -reach; y < mask.height + reach; ++y) {
    const std::uint8_t *from = mask.set.data() + std::clamp(y, 0, mask.height - 1) * width;
    std::fill_n(row.begin(), reach, from[0]);
    std::copy_n(from, width, row.begin() + reach);
    std::fill_n(row.end() - reach, reach, from[width - 1]);
    join_five(row.data() + reach, across.data() + (y + reach) * width, 1, width, join);
  }
  join_five(across.data() + reach * width, out.set.data(), width, width * mask.height, join);
  return out;
}

} // namespace

PictureMask joined_to_edge(const PictureMask &mask, int strip) {
  const Pieces pieces(mask);
  std::vector<bool> joined(pieces.count());
  for (const Run &run : pieces.runs())
    if (std::min({run.begin, run.y, mask.width - run.end, mask.height - 1 - run.y}) < strip)
      joined[run.piece] = true;
  return pieces.mask_of(joined);
}

PictureMask opened(const PictureMask &mask) {
  const auto both = [](std::uint8_t a, std::uint8_t b) { return static_cast<std::uint8_t>(a & b); };
  const auto either = [](std::uint8_t a, std::uint8_t b) { return static_cast<std::uint8_t>(a | b); };
  return of_square(of_square(mask, both), either);
}

PictureMask largest_piece(const PictureMask &mask) {
  const Pieces pieces(mask);
  std::vector<int> pixels(pieces.count());
  for (const Run &run : pieces.runs()) pixels[run.piece] += run.end - run.begin;
  std::vector<bool> largest(pieces.count());
  if (!pixels.empty())
    largest[static_cast<std::size_t>(std::ranges::max_element(pixels) - pixels.begin())] = true;
  return pieces.mask_of(largest);
}

} // namespace stoneproof
