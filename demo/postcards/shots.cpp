// Paints the pictures of the postcards and makes them as small as an export does. Only way in: shots.h.
#include "demo/postcards/shots.h"

#include "demo/album.h"

#include <algorithm>
#include <cmath>
#include <future>
#include <stdexcept>
#include <vector>

namespace stoneproof::demo {

namespace {

struct Shot {
  const char *name, *file; ///< file: of the album
  int width;               ///< pixels
};

constexpr Shot shots[] = {
    {"lake", "cover-lake.jpg", 1840}, {"house", "house.jpg", 1480}, {"wheat", "wheat.jpg", 1480},
    {"mill", "mill.jpg", 780},        {"night", "night.png", 1480}, {"valley", "meadow.jpg", 1480},
    {"picnic", "picnic.jpg", 574}, // 110 ppi: planted
    {"kite", "kite.jpg", 600},        {"flood", "flood.jpg", 2050}, {"street", "street.jpg", 3000},
    {"coast", "coast.jpg", 1480},
};

/// The postcard of the ferry is in no folder: planted.
const AlbumPicture ferry{"", paint_harbour, 91, 900, 600, {.tone = Tone::faded, .grain = 0.02}, {}};

const AlbumPicture &of_album(const std::string &file) {
  const auto found = std::find_if(album().begin(), album().end(),
                                  [&](const AlbumPicture &picture) { return picture.file == file; });
  if (found == album().end()) throw std::runtime_error("the album has no " + file);
  return *found;
}

Canvas exported(const Shot &shot) {
  Canvas canvas = painted(of_album(shot.file));
  const double times = static_cast<double>(shot.width) / canvas.width();
  if (times < 0.75) blur(canvas, 0.4 / times); // else the grain would come out coarse
  return resized(canvas, shot.width, static_cast<int>(std::lround(canvas.height() * times)));
}

/// Another shot of the coast, a little later: a cloud has come up on the right, and a second boat. Planted.
void move_on(Canvas &canvas) {
  const double middle = canvas.aspect() / 2;
  canvas.shade(
      [&](Vec at, Colour now) { return now * (1 - 0.09 * ramp(middle - 0.25, middle + 0.25, at.x)); });
  fill(canvas, {{0.235, 0.6}, {0.235, 0.47}, {0.3, 0.6}}, rgb(0xCFC3A6));
  fill(canvas, {{0.228, 0.6}, {0.228, 0.5}, {0.195, 0.6}}, rgb(0xBDB196));
  fill(canvas, {{0.18, 0.607}, {0.315, 0.607}, {0.295, 0.63}, {0.195, 0.63}}, rgb(0x4C3A32));
}

} // namespace

void add_shots(CardFile &cards) {
  std::vector<std::future<Canvas>> at_work;
  for (const Shot &shot : shots) at_work.push_back(std::async(std::launch::async, exported, shot));
  for (std::size_t i = 0; i < std::size(shots); ++i) {
    Canvas canvas = at_work[i].get();
    if (shots[i].name == std::string("coast")) move_on(canvas);
    cards.add_picture(shots[i].name, canvas);
  }
  cards.add_picture("ferry", painted(ferry));
}

double aspect_of(const std::string &name) {
  if (name == "ferry") return static_cast<double>(ferry.width) / ferry.height;
  for (const Shot &shot : shots) {
    if (name != shot.name) continue;
    const AlbumPicture &picture = of_album(shot.file);
    return static_cast<double>(picture.width) / picture.height;
  }
  throw std::runtime_error("no postcard shows " + name);
}

} // namespace stoneproof::demo
