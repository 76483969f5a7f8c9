// The table of the album's pictures. Only way in: album.h. demo/book.xml says where each is used; a "wrong"
// size here is planted and listed in demo/planted.md.
#include "demo/album.h"

namespace stoneproof::demo {

namespace {

constexpr Finish plain{}; // a colour print, fresh
constexpr Finish faded{.tone = Tone::faded, .vignette = 0.15, .grain = 0.025, .dust = 30};
constexpr Finish sepia{.tone = Tone::sepia, .vignette = 0.3, .grain = 0.03, .dust = 60};
constexpr Finish gray{.tone = Tone::gray, .vignette = 0.2, .grain = 0.03, .dust = 40};
constexpr Finish cool{.tone = Tone::cool, .vignette = 0.2, .grain = 0.02};
constexpr Finish sepia_print{
    .tone = Tone::sepia, .vignette = 0.25, .grain = 0.03, .border = 0.035, .dust = 50};
constexpr Finish gray_print{.tone = Tone::gray, .vignette = 0.2, .grain = 0.03, .border = 0.035, .dust = 40};
constexpr Finish faded_print{
    .tone = Tone::faded, .vignette = 0.1, .grain = 0.025, .border = 0.035, .dust = 20};
// What automatic corrections do.
constexpr Finish burnt_out{.tone = Tone::sepia, .vignette = 0.1, .grain = 0.02, .white = 2.6};
constexpr Finish one_black{.tone = Tone::cool, .grain = 0.02, .black = -0.55};
constexpr Finish vivid{.tone = Tone::vivid};
constexpr Finish flat{.tone = Tone::faded, .grain = 0.01, .black = 0.42, .white = 0.7};
constexpr Finish wrong_side{.tone = Tone::sepia, .grain = 0.006, .dust = 3, .black = 0.9, .white = 0.93};
constexpr Finish stretched{.grain = 0.02, .black = 0.2, .white = 0.8, .stretch = 1.4};
constexpr Finish out_of_focus{.blur = 3};
constexpr Finish printed{.grain = 0.01, .dots = 3.1};
constexpr Finish askew{.tone = Tone::sepia, .vignette = 0.1, .grain = 0.02, .bed = 0.03, .tilt = 1.7};

constexpr Finish paper{.grain = 0.01};
constexpr Finish drawn{.grain = 0};

Finish soiled(Finish finish) {
  finish.dirty_glass = true;
  return finish;
}

Storage scan(double ppi, Samples samples = Samples::rgb8) { return {.samples = samples, .ppi = ppi}; }
Storage tiled(double ppi, Samples samples = Samples::rgb8) {
  return {.samples = samples, .ppi = ppi, .tiled = true};
}
Storage uncompressed(double ppi, Samples samples = Samples::rgb8) {
  return {.samples = samples, .ppi = ppi, .packed = false};
}
Storage phone(int orientation) {
  return {.ppi = 72, .orientation = orientation, .camera = "Lumen & Daughters"};
}
Storage enlarged(double times) { return {.ppi = 300, .quality = 97, .enlarged = times}; }
Storage saved_before(int quality) { return {.ppi = 300, .quality = 92, .before = quality}; }
Storage from_the_web() { return {.ppi = 72, .quality = 72, .progressive = true}; }
Storage with_profile(double ppi, Profile profile) { return {.ppi = ppi, .profile = profile}; }
constexpr Samples gray8 = Samples::gray8, gray16 = Samples::gray16, bilevel = Samples::bilevel;

std::vector<AlbumPicture> first_half() {
  return {
      {"house.jpg", paint_house, 11, 2126, 1606, faded, scan(600)},
      {"valley.jpg", paint_valley, 12, 5100, 2310, plain, scan(1100)},
      {"bridge.jpg", paint_bridge, 13, 1000, 694, gray, scan(300)},
      {"family-tree.tif", paint_family_tree, 14, 5669, 3968, drawn, scan(1200, bilevel)},
      {"ada.jpg", paint_profile, 15, 1000, 1188, sepia, scan(400)},
      {"hanna.tif", paint_profile, 32, 1000, 1188, sepia, scan(400)},
      {"eleni.png", paint_profile, 4, 1000, 1188, faded, scan(400)},
      {"tilda.jpg", paint_window, 18, 380, 452, sepia, from_the_web()},
      {"mill.jpg", paint_windmill, 19, 2560, 3438, faded, scan(800)},
      {"lake.jpg", paint_lake, 20, 1200, 904, faded_print, scan(360)},
      {"ferry-steps.jpg", paint_bridge, 22, 400, 301, sepia_print, from_the_web()},
      {"picnic.jpg", paint_group, 23, 2100, 1140, sepia, scan(600)},
      {"letter-1907.jpg", paint_letter, 24, 2000, 2800, paper, scan(400)},
      {"stamp.png", paint_stamp, 25, 600, 720, paper, scan(600, Samples::indexed)},
      {"garden.jpg", paint_garden, 26, 1040, 1040, vivid, phone(1)},
      {"lace collar.tif", paint_lace, 27, 1040, 1040, plain, tiled(600)},
      {"street.jpg", paint_street, 28, 3120, 1910, sepia, scan(600)},
      {"shop front.jpg", paint_house, 29, 1020, 768, gray_print, scan(300, gray8)},
      {"carrier.jpg", paint_group, 30, 850, 640, sepia_print, scan(300)},
      {"watch.png", paint_watch, 31, 820, 820, plain, scan(400)},
      {"locomotive.tif", paint_locomotive, 32, 2150, 1413, gray, scan(600, Samples::cmyk8)},
      {"postcard-1931.jpg", paint_postcard, 33, 1874, 1205, paper, scan(340)},
      {"bicycle.jpg", paint_bicycle, 34, 1400, 1050, faded, phone(1)},
      {"depot.tif", paint_street, 35, 1600, 1200, gray, {.samples = gray8, .ppi = 600, .pages = 3}},
      {"crew.jpg", paint_group, 36, 2100, 1320, gray_print, scan(400, gray8)},
      {"wheat.jpg", paint_wheat, 37, 2560, 1808, plain, scan(600)},
      {"harvest.jpg", paint_group, 38, 1040, 783, faded_print, with_profile(300, Profile::cut_short)},
      {"wood.jpg", paint_forest, 39, 1040, 783, soiled(flat), scan(300)},
      {"clipping-ferry.tif", paint_clipping, 40, 1780, 2427, paper, scan(411, gray8)},
      {"clipping-notice.jpg", paint_clipping, 41, 541, 787, paper, from_the_web()},
      {"clipping-harvest.png", paint_clipping, 45, 758, 827, paper, scan(350, gray8)},
      {"sledge.jpg", paint_snow, 43, 1040, 783, cool, with_profile(300, Profile::mistaken)},
      {"lane.jpg", paint_street, 44, 1040, 783, one_black, scan(300)},
      {"winter-yard.jpg", paint_group, 46, 2100, 1320, gray, scan(600, gray8)},
      {"winter-slide.jpg", paint_snow, 47, 1600, 2148, plain, scan(1600)},
  };
}

std::vector<AlbumPicture> second_half() {
  return {
      {"sail.jpg", paint_sail, 48, 1050, 1668, faded, scan(600)},
      {"Λιμάνι Αμπελίκι 1936.jpg", paint_harbour, 49, 2480, 1674, faded, scan(600)},
      {"quay.jpg", paint_harbour, 50, 1050, 1668, sepia, scan(600)},
      {"survey-map.jpg", paint_map, 51, 1476, 1083, paper, scan(250)},
      {"floor-plan.tif", paint_floor_plan, 52, 2835, 1949, drawn, scan(900, bilevel)},
      {"boat-drawing.tif", paint_boat_drawing, 53, 1417, 974, drawn, scan(450, bilevel)},
      {"lido.jpg", paint_lake, 54, 1520, 1200, plain, scan(300)},
      {"nets.tif", paint_sail, 55, 2394, 1638, cool, uncompressed(800, gray8)},
      {"terrace.jpg", paint_house, 56, 2550, 1700, faded, scan(600)},
      {"at-the-sill.jpg", paint_window, 57, 1040, 783, soiled(gray), scan(300, gray8)},
      {"border.jpg", paint_garden, 58, 1040, 783, soiled(wrong_side), scan(300)},
      {"night.png", paint_night, 59, 2150, 1474, plain, scan(300)},
      {"quilt.tif", paint_quilt, 60, 1040, 1040, stretched, scan(400)},
      {"table lace.jpg", paint_lace, 61, 1040, 1040, plain, with_profile(400, Profile::wide)},
      {"loose-print.jpg", paint_windmill, 62, 1000, 743, sepia_print, scan(600)},
      {"coast.jpg", paint_sail, 63, 1500, 1125, faded, scan(300)},
      {"by-the-window.jpg", paint_window, 64, 1260, 945, sepia, scan(300)},
      {"grandmother.tif", paint_window, 65, 900, 1222, sepia, scan(600)},
      {"fair.jpg", paint_group, 66, 1020, 768, plain, scan(300), Mishap::text_in_disguise},
      {"regatta.jpg", paint_sail, 67, 1020, 768, plain, scan(300), Mishap::broke_off_early},
      {"parade.jpg", paint_street, 68, 1020, 768, faded, scan(300), Mishap::broke_off_halfway},
      {"dance.jpg", paint_group, 69, 1040, 783, soiled(burnt_out), scan(300)},
      {"meadow.jpg", paint_valley, 70, 2520, 1800, plain, scan(300)},
      {"medal.png", paint_medal, 71, 1040, 783, plain, scan(400, Samples::rgba8)},
      {"reunion.jpg", paint_group, 72, 2150, 1474, plain, phone(6)},
      {"porch.jpg", paint_house, 73, 1050, 1359, plain, phone(8)},
      {"ferry-company.tif", paint_typed_page, 74, 1290, 1774, paper, scan(410, gray8)},
      {"stars.tif", paint_night, 75, 1200, 900, gray, scan(600, gray16)},
      {"spare-harbour.jpg", paint_harbour, 76, 900, 600, sepia, scan(300)},
  };
}

// The cover, and what was found in the drawer when the pages were already laid out.
std::vector<AlbumPicture> from_the_drawer() {
  return {
      {"cover-lake.jpg", paint_lake, 77, 2790, 1790, faded, scan(600)},
      {"swing.jpg", paint_group, 78, 1040, 783, soiled(faded_print), scan(300)},
      {"kite.jpg", paint_wheat, 79, 1040, 783, faded, scan(300)},
      {"raft.jpg", paint_sail, 80, 1040, 783, soiled(sepia_print), scan(300)},
      {"picket.jpg", paint_street, 81, 1040, 783, gray_print, scan(300, gray8)},
      {"flood.jpg", paint_bridge, 82, 3600, 1510, sepia, scan(600)},
      {"parlour.jpg", paint_window, 83, 1040, 783, soiled(sepia), saved_before(60)},
      {"long-table.jpg", paint_group, 84, 2640, 966, sepia, scan(600)},
      {"half-term.jpg", paint_forest, 85, 1040, 783, out_of_focus, scan(300)},
      {"last-boat.jpg", paint_lake, 86, 1040, 783, cool, enlarged(2.5)},
      {"choir.jpg", paint_group, 87, 1406, 1059, printed, scan(420, gray8)},
      {"barn.jpg", paint_house, 88, 1080, 813, askew, scan(300)},
      {"message.png", paint_message, 89, 1080, 813, drawn, {}},
      {"quay-by-mail.jpg", paint_harbour, 50, 790, 1255, sepia, {.ppi = 300, .quality = 78}},

  };
}

} // namespace

std::span<const AlbumPicture> album() {
  static const std::vector<AlbumPicture> all = [] {
    auto pictures = first_half();
    for (const auto &more : {second_half(), from_the_drawer()})
      pictures.insert(pictures.end(), more.begin(), more.end());
    return pictures;
  }();
  return all;
}

Canvas painted(const AlbumPicture &picture) {
  const auto before = [&](int pixels) { return static_cast<int>(pixels / picture.storage.enlarged + 0.5); };
  Canvas canvas(before(picture.width), before(picture.height));
  Random random(picture.seed);
  picture.scene(canvas, random);
  finish(canvas, picture.finish, picture.seed + 1);
  return canvas;
}

} // namespace stoneproof::demo
