// Sentences about where a picture comes from. The only ways in are the functions of origin_words.h; tested in
// tests/reports/content.
#include "reports/content/origin_words.h"

#include "engine/rules/bed.h"
#include "reports/content/detail_words.h"
#include "reports/content/figures.h"
#include "reports/content/placed_of.h"
#include "reports/content/sentences.h"

#include <fmt/format.h>

#include <cmath>

namespace stoneproof::content {

namespace {

/// From this scanner setting on, descreening has enough of every dot to work with (common practice).
constexpr double enough_to_descreen = 600;

/// Pixels of the scan to an inch of the original, where its size is told.
std::optional<Density> scanned_at(const Evidence &evidence, std::size_t picture) {
  const auto &original = evidence.book.pictures[picture].original;
  const auto &facts = evidence.pictures[picture].facts;
  if (!original || !original->size || !facts) return std::nullopt;
  const auto longer = static_cast<double>(std::max(facts->size.width, facts->size.height));
  return Pixels{longer} / std::max(original->size->width, original->size->height);
}

const Shown *shown_of(const Evidence &evidence, const Finding &finding) {
  const PlacedFrame *placed = placed_of(evidence, finding);
  return placed ? evidence.shown_at(static_cast<std::size_t>(placed - evidence.frames.data())) : nullptr;
}

/// " (133 on the original)"; empty where that is not known, or the same.
std::string on_original(const Evidence &evidence, const Finding &finding, const PrintedScreen &found) {
  const auto scanned = scanned_at(evidence, *finding.picture);
  if (!scanned) return {};
  const double here = std::round(std::get<Ruling>(finding.measured).lines),
               there = std::round(found.ruling * scanned->ppi());
  return here == there ? std::string() : fmt::format(" ({:.0f} on the original)", there);
}

std::string pixels_of(const Evidence &evidence, std::size_t picture) {
  const auto &facts = evidence.pictures[picture].facts;
  return facts ? fmt::format("{} × {} pixels", facts->size.width, facts->size.height) : std::string();
}

/// "page 9", as inside a sentence; empty where no frame shows the picture.
std::string place_of_picture(const Evidence &evidence, std::size_t picture) {
  for (const PlacedFrame &placed : evidence.frames) {
    if (placed.picture != picture) continue;
    std::string name = page_name(evidence.page_of(placed));
    name[0] = static_cast<char>(name[0] - 'A' + 'a');
    return name;
  }
  return {};
}

const CopyPair *pair_of(const Evidence &evidence, const Finding &finding) {
  for (const CopyPair &pair : evidence.copies)
    if (pair.has(*finding.picture) && pair.partner_of(*finding.picture) == *finding.with_picture)
      return &pair;
  return nullptr;
}

} // namespace

std::string printed_screen_words(const Evidence &evidence, const Finding &finding) {
  const Shown *shown = shown_of(evidence, finding);
  if (!shown || std::holds_alternative<std::monostate>(finding.measured))
    return "Was scanned from print: its dots show, and the press’s own dots will make patterns with them "
           "(moiré).";
  const PrintedScreen &found = shown->detail.printed;
  return fmt::format(
      "Was scanned from print: its dots stand at {} on this page{}, turned by {}. The press’s own dots "
      "will make patterns with them (moiré).",
      figure(finding.measured), on_original(evidence, finding, found), degrees(found.angle));
}

std::string printed_screen_remedy(const Evidence &evidence, const Finding &finding) {
  const auto &original = evidence.book.pictures[*finding.picture].original;
  if (original && original->lost)
    return "The original is lost. Soften the picture in an image editor until the dots are gone, then make "
           "it "
           "smaller; ask the printer for a test print.";
  const auto scanned = scanned_at(evidence, *finding.picture);
  if (!scanned || scanned->ppi() < enough_to_descreen) return {};
  return "The scan is fine enough to take the dots out: let the scan program descreen it, or soften it in an "
         "image "
         "editor until they are gone, before it is made smaller. A photographic print of the same picture "
         "would be "
         "better still.";
}

std::string bed_words(const Evidence &evidence, const Finding &finding) {
  const PlacedFrame *placed = placed_of(evidence, finding);
  const auto strips = placed && placed->laid ? bed_strips(evidence, *placed) : std::nullopt;
  if (!strips) return {};
  std::vector<std::string> sides;
  const auto add = [&](Length strip, const char *name) {
    if (strip >= strips->widest() / 2) sides.emplace_back(name);
  };
  add(strips->top, "upper"), add(strips->bottom, "lower"), add(strips->left, "left"),
      add(strips->right, "right");
  const bool white = evidence.pictures[*finding.picture].bed->white;
  return fmt::format("A {} of {} shows along the picture’s {} {}{}.",
                     white ? "white strip" : "black strip of the scanner’s bed", figure(finding.measured),
                     listed(sides), sides.size() == 1 ? "edge" : "edges",
                     white ? ": the scanner’s lid, or the print’s own white edge" : "");
}

std::string bed_remedy(const Evidence &evidence, const Finding &finding) {
  if (evidence.pictures[*finding.picture].bed->white) return {};
  return "Show a part of the picture that ends inside the strip, or cut it off in the picture.";
}

std::string tilted_words(const Evidence &, const Finding &finding) {
  const auto *tilt = std::get_if<Angle>(&finding.measured);
  if (!tilt) return {};
  return fmt::format("The original lay askew on the scanner: it is turned {} by {}.",
                     tilt->degrees > 0 ? "clockwise" : "anticlockwise", degrees(tilt->degrees));
}

std::string near_copy_words(const Evidence &evidence, const Finding &finding) {
  if (!finding.picture || !finding.with_picture) return {};
  const std::size_t mine = *finding.picture, partner = *finding.with_picture;
  const CopyPair *pair = pair_of(evidence, finding);
  const std::string place = place_of_picture(evidence, partner);
  const std::string partner_name =
      fmt::format("{} ({})", evidence.book.pictures[partner].file, place.empty() ? "in no frame" : place);
  if (!pair || !pair->is_better(partner))
    return fmt::format("Shows the same as {}. Neither file is the better one.", partner_name);
  return fmt::format("Shows the same as {}, which is the better copy: {} against {} here.", partner_name,
                     pixels_of(evidence, partner), pixels_of(evidence, mine));
}

std::string past_fact(const JpegPast &past) {
  if (past.certainty != Certainty::firm || past.kind == JpegPastKind::none) return {};
  const std::string quality = earlier_quality(past.earlier);
  switch (past.kind) {
  case JpegPastKind::aligned: return fmt::format("was saved as a JPEG of {} before", quality);
  case JpegPastKind::moved:
    return fmt::format("was saved as a JPEG of {} before, then cropped or moved", quality);
  case JpegPastKind::was_jpeg: return fmt::format("its pixels were those of a JPEG of {}", quality);
  case JpegPastKind::none: break;
  }
  return {};
}

std::string printed_fact(const PrintedScreen &printed) {
  if (printed.certainty != Certainty::firm) return {};
  if (!printed.ruling_sure) return "scanned from print: its dots show";
  return fmt::format("scanned from print: a line of dots every {:.1f} pixels, turned by {}",
                     1 / printed.ruling, degrees(printed.angle));
}

std::string bed_fact(const Bed &bed) {
  if (bed.certainty != Certainty::firm) return {};
  std::string words = fmt::format("{} of it is {}", per_cent(bed.share),
                                  bed.white ? "the scanner’s white lid, or the white edge of the print"
                                            : "the black of the scanner’s glass or lid");
  if (bed.tilt && std::abs(*bed.tilt) >= 0.5)
    words += fmt::format("; the original is turned {} by {}", *bed.tilt > 0 ? "clockwise" : "anticlockwise",
                         degrees(*bed.tilt));
  return words;
}

std::string copy_fact(const CopyOf &copy) {
  const std::string file = copy.file.string();
  if (copy.same_bytes) return fmt::format("the same file as {}, to the byte", file);
  if (copy.better) return fmt::format("shows the same as {}, which is the better copy", file);
  if (copy.worse) return fmt::format("shows the same as {}, and is the better copy", file);
  return fmt::format("shows the same as {}; neither is the better copy", file);
}

} // namespace stoneproof::content
