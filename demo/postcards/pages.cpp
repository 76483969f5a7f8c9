// The pages of the postcards and their planted faults. Only way in: postcards.h.
#include "demo/postcards/card_file.h"
#include "demo/postcards/postcards.h"
#include "demo/postcards/shots.h"

#include <string>

namespace stoneproof::demo {

namespace {

constexpr double width = 148, height = 105, bleed = 3, beside = 8; // mm
constexpr Area window{12, 10, 124, 72};
constexpr double caption_line = 90.5, place_line = 96.5;
const std::string ink = "0 0 0 0.85 k", river = "0.65 0.2 0.35 0.25 k", river_lines = "0.65 0.2 0.35 0.25 K";

CardPage sheet(const Drawing &drawing) { return {width, height, beside, bleed, drawing.operators()}; }

Drawing blank(double sheet_beside = beside) { return {height, sheet_beside}; }

/// What stands below a picture: a caption, its place, and the number of the page at the outside.
void words_below(const CardFile &cards, Drawing &on, int page, const std::string &caption,
                 const std::string &place, bool embedded = true) {
  on.set(ink).text(cards.italic(), 11, width / 2, caption_line, caption, Align::centre);
  on.set(river).text(cards.sans(), 8, width / 2, place_line, place, Align::centre, 0.8);
  const bool left = page % 2 == 0;
  const double outside = left ? 12 : width - 12;
  const Align align = left ? Align::left : Align::right;
  on.set(ink);
  if (embedded)
    on.text(cards.sans(), 8, outside, place_line, std::to_string(page), align);
  else // its figures are larger in their em
    on.text(cards.missing(), 7, outside, place_line, std::to_string(page), align);
}

Drawing card(const CardFile &cards, int page, const std::string &picture, const std::string &caption,
             const std::string &place) {
  Drawing on = blank();
  on.picture(picture, aspect_of(picture), window);
  words_below(cards, on, page, caption, place);
  return on;
}

CardPage front(const CardFile &cards) {
  Drawing on = blank();
  on.picture("lake", aspect_of("lake"), {-bleed, -bleed, width + 2 * bleed, 72 + bleed});
  on.set(river).fill({-bleed, 72, width + 2 * bleed, height - 72 + bleed});
  on.set("0 0 0 0 k").text(cards.serif(), 25, width / 2, 86.5, "Wish You Were Dry", Align::centre);
  on.text(cards.sans(), 8.5, width / 2, 95, "TEN POSTCARDS FROM WITHY FORD", Align::centre, 1.5);
  return sheet(on);
}

/// The back of a postcard. Its fourth line is a hairline: planted.
CardPage back(const CardFile &cards) {
  Drawing on = blank();
  on.set(ink).lines(cards.italic(), 11, 6.2, 12, 18,
                    {"Dear Maud,", "it has stopped. We do not know what",
                     "to do with our hands. Margery says the", "river looks smaller from above, like",
                     "somebody asleep. The landlady has", "begun to count the spoons.",
                     "We come home on Thursday, or when", "the ferry does."});
  on.text(cards.italic(), 11, 45, 73, "Your cousin Tilda");
  on.set(river_lines).line(80, 12, 80, 84, 0.6).frame({118, 12, 18, 22}, 0.6);
  on.set(river).text(cards.sans(), 8, 127, 24, "STAMP", Align::centre, 0.8);
  for (const double y : {50.0, 59.0, 68.0}) on.line(86, y, 136, y, 0.6);
  on.line(86, 77, 136, 77, 0.1);
  on.set(ink).text(cards.italic(), 11, 87, 48.4, "Miss Maud Ellerby-Finch");
  on.text(cards.italic(), 11, 87, 57.4, "The Ferry House");
  on.text(cards.italic(), 11, 87, 66.4, "Withy Ford");
  on.set(river).text(cards.sans(), 8, width / 2, place_line, "THE BACK OF NO. 1, AS FOUND", Align::centre,
                     0.8);
  on.set(ink).text(cards.sans(), 8, 12, place_line, "2");
  return sheet(on);
}

/// Its number is set in Helvetica, which is not in the file: planted.
CardPage house(const CardFile &cards) {
  Drawing on = blank();
  on.picture("house", aspect_of("house"), window);
  words_below(cards, on, 3, "The Ferry House. Ours is the window that will not shut.", "NO. 1 — THE LANE",
              false);
  return sheet(on);
}

/// Its BleedBox is smaller than its TrimBox: planted.
CardPage wheat(const CardFile &cards) {
  CardPage page = sheet(card(cards, 4, "wheat", "Wheat, before the horse got in", "NO. 2 — LONG FIELD"));
  page.bleed = -2;
  return page;
}

/// A band runs to the edges, where its sheet ends too: planted.
CardPage mill(const CardFile &cards) {
  Drawing on = blank(0);
  on.set(river).fill({width - 9, 0, 9, height});
  on.picture("mill", aspect_of("mill"), {10, 10, 60, 85});
  on.set(ink).lines(
      cards.italic(), 11, 6.2, 78, 66,
      {"The mill. It has not turned since", "the miller’s wedding, and neither,", "they say, has he."});
  on.set(river).text(cards.sans(), 8, 78, 87.5, "NO. 3 — UP THE HILL", Align::left, 0.8);
  on.set(ink).text(cards.sans(), 8, width - 12, place_line, "5", Align::right);
  return {width, height, 0, 0, on.operators()};
}

/// Its frame is painted in a spot ink: planted.
CardPage night(const CardFile &cards) {
  Drawing on = card(cards, 6, "night", "The regatta, seen from bed", "NO. 4 — AFTER TEN");
  on.set("/FerryRed CS 1 SCN").frame({9, 7, 130, 78}, 1.5);
  return sheet(on);
}

/// A half transparent veil lies over the foot of the picture: planted.
CardPage valley(const CardFile &cards) {
  Drawing on = blank();
  on.picture("valley", aspect_of("valley"), window);
  on.set("/Veil gs 0 0 0 0 k")
      .fill({window.x, 58, window.width, window.y + window.height - 58})
      .set("/Solid gs");
  words_below(cards, on, 7, "The valley in fog. It is a very good valley.", "NO. 5 — HALF PAST SIX");
  return sheet(on);
}

/// Exported at 110 ppi, though its file has more; and a kite that was pushed off the sheet: planted.
CardPage picnic(const CardFile &cards) {
  Drawing on =
      card(cards, 8, "picnic", "It rained at three. We stayed, out of principle.", "NO. 6 — BY THE WEIR");
  on.picture("kite", aspect_of("kite"), {-70, 20, 46, 34.6});
  return sheet(on);
}

/// A comment was left on it: planted.
CardPage flood(const CardFile &cards) {
  CardPage page =
      sheet(card(cards, 9, "flood", "The bridge, and most of the river", "NO. 7 — THE FORD, IN MARCH"));
  page.note = {129, 85, 6, 6};
  page.note_words = "Ask Eleni: was this not the year after?";
  return page;
}

/// Went through a print dialog: twice as large, on A4, without its boxes. Planted.
CardPage street(const CardFile &cards) {
  Drawing on(height, 0, 297.0 / width);
  on.picture("street", aspect_of("street"), window);
  words_below(cards, on, 10, "Market day. The dog is called Bishop.", "NO. 8 — MILL LANE");
  return {297, 210, 0, {}, on.operators()};
}

/// Another shot than the album’s of the same coast: planted.
CardPage coast(const CardFile &cards) {
  return sheet(card(cards, 11, "coast", "That is us, the small one", "NO. 9 — THE BAY"));
}

/// Flate data (RFC 1950, 1951) that breaks off in the middle of a block that was not packed.
std::string broken_off(const std::string &operators) {
  const auto count = static_cast<unsigned>(2 * operators.size());
  const auto half = [](unsigned value) {
    return std::string{static_cast<char>(value & 255), static_cast<char>(value >> 8 & 255)};
  };
  return "\x78\x9C" + std::string(1, '\0') + half(count) + half(~count) + operators;
}

/// Its picture’s file is not in the folder, and its second stream breaks off: planted.
CardPage last(const CardFile &cards) {
  Drawing on = blank(), rule = blank();
  on.picture("ferry", aspect_of("ferry"), {42, 10, 64, 42.6});
  on.set(ink).text(cards.italic(), 11, width / 2, 60, "The last ferry, which we missed", Align::centre);
  on.set(river).text(cards.sans(), 8, width / 2, 66, "NO. 10 — THE LANDING", Align::centre, 0.8);
  on.set(ink).text(cards.serif(), 9, width / 2, 82, "Ten postcards that nobody sent, found in a biscuit tin.",
                   Align::centre);
  on.text(cards.serif(), 9, width / 2, 87, "Where a back was blank, it stays blank: it is your turn.",
          Align::centre);
  rule.set(river_lines).line(64, 73, 84, 73, 0.6);
  CardPage page = sheet(on);
  page.damaged = broken_off(rule.operators());
  return page;
}

} // namespace

void write_postcards(const std::filesystem::path &file) {
  CardFile cards;
  add_shots(cards);
  for (const auto make : {front, back, house, wheat, mill, night, valley, picnic, flood, street, coast, last})
    cards.add_page(make(cards));
  cards.write(file);
}

} // namespace stoneproof::demo
