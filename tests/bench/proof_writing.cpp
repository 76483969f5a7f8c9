// How layout and writing of the proof grow with the book: time, growth, peak memory and size for books that
// are built here, with four frames a page, a finding on most of them, and made-up small copies; no picture is
// measured. Prints figures and asserts nothing. Usage: bench_proof_writing [most pages]
#include "engine/press/read.h"
#include "engine/run/run.h"
#include "reports/content/proof_content.h"
#include "reports/layout/proof.h"
#include "reports/pdf/write_pdf.h"
#include "reports/record/record.h"
#include "tests/bench/best_time.h"
#include "tests/bench/growth.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <random>
#include <string>
#include <vector>

using namespace stoneproof;
using namespace stoneproof::literals;

namespace {

Frame frame_at(std::size_t number, int column, int row) {
  Frame frame;
  frame.id = "f" + std::to_string(number);
  frame.picture = number;
  frame.rect = {20_mm + 88_mm * column, 20_mm + 125_mm * row, 82_mm, 110_mm};
  return frame;
}

Book made_book(std::size_t pages) {
  Book book;
  book.source = "book.xml";
  book.title = "A thousand mills";
  book.language = "en";
  book.trim = {210_mm, 280_mm};
  book.bleed = {3_mm, 3_mm, 3_mm, {}};
  book.safe_margin = {5_mm, 5_mm, 5_mm, 5_mm};
  for (std::size_t i = 0; i < pages; ++i) {
    Page page;
    page.number = static_cast<int>(i) + 1;
    for (int k = 0; k < 4; ++k) {
      page.frames.push_back(frame_at(book.pictures.size(), k % 2, k / 2));
      Picture picture;
      picture.id = "p" + std::to_string(book.pictures.size());
      picture.file = "scans/mill-" + picture.id + ".jpg";
      book.pictures.push_back(picture);
    }
    TextBlock text;
    text.kind = TextKind::caption;
    text.rect = {20_mm, 258_mm, 170_mm, 10_mm};
    text.type_size = 9_pt;
    text.text = "The mill in the summer of the flood, seen from the bridge, page " + std::to_string(i + 1);
    page.texts.push_back(text);
    book.pages.push_back(std::move(page));
  }
  return book;
}

/// As busy as a photograph of foliage.
SmallCopy made_copy(int width, int height) {
  std::mt19937 random(1);
  std::normal_distribution<double> grain(0, 9);
  Preview preview;
  preview.width = width, preview.height = height;
  preview.part = {0, 0, static_cast<double>(width), static_cast<double>(height)};
  for (int y = 0; y < preview.height; ++y)
    for (int x = 0; x < preview.width * 3; ++x)
      preview.rgb.push_back(static_cast<std::uint8_t>(
          std::clamp(120 + 60 * std::sin(x * 0.02) * std::cos(y * 0.03) + grain(random), 0.0, 255.0)));
  return compress(preview, "made").value();
}

/// Three frames of four come out of too few pixels.
Checked made_checked(std::size_t pages) {
  Checked checked;
  Evidence &evidence = checked.evidence;
  evidence.book = made_book(pages);
  evidence.press = built_in_press_sheet();
  std::vector<std::optional<PixelSize>> sizes;
  const SmallCopy copy = made_copy(254, 340);  // the drawing of a frame at 144 ppi
  const SmallCopy patch = made_copy(195, 195); // 25 mm at the frame's 198 ppi
  for (std::size_t i = 0; i < evidence.book.pictures.size(); ++i) {
    PictureState state;
    state.facts.emplace();
    state.facts->size = i % 4 == 0 ? PixelSize{1280, 1720} : PixelSize{640, 860};
    state.facts->format = Format::jpeg;
    state.facts->colour = ColourModel::rgb;
    state.facts->tag = ColourTag::srgb;
    state.sha256 = std::to_string(i);
    evidence.pictures.push_back(state);
    sizes.emplace_back(state.facts->size);
    checked.copies.emplace_back(copy);
    checked.copies.back()->part = {0, 0, static_cast<double>(state.facts->size.width),
                                   static_cast<double>(state.facts->size.height)};
    checked.patches.emplace_back(Patch{patch, i});
  }
  evidence.frames = place_frames(evidence.book, sizes);
  evidence.spaces = page_spaces(evidence.book, evidence.press);
  evidence.bound = bind(evidence.book, evidence.press);
  evidence.shown.resize(evidence.frames.size());
  checked.findings = check_rules(evidence);
  return checked;
}

struct Cost {
  double content = 0, layout = 0, writing = 0; ///< milliseconds of processor time
  double before = 0, peak = 0;                 ///< MB that the process held at most, before and after
  double bytes = 0;
  std::size_t findings = 0, sheets = 0;
};

Cost measured(std::size_t pages) {
  Checked checked = made_checked(pages);
  const Typesetter typesetter = Typesetter::load().value();
  const std::string record = record::record_text(checked.evidence, checked.findings, {"0", "", {}});
  Cost cost;
  cost.findings = checked.findings.size();
  cost.before = bench::peak_memory();
  std::optional<content::ProofContent> words;
  cost.content =
      bench::best_time(1, [&] { words.emplace(content::proof_content(checked.evidence, checked.findings)); });
  layout::Document document;
  cost.layout = bench::best_time(1, [&] {
    document = layout::proof_document(*words, std::move(checked), typesetter, {"made", {}});
  });
  document.attachments.push_back(
      {"made.record.json", "The record of this proof", "application/json", record});
  cost.sheets = document.pages.size();
  const auto file =
      std::filesystem::temp_directory_path() / ("proof-writing-" + std::to_string(pages) + ".pdf");
  cost.writing = bench::best_time(1, [&] {
    if (const auto written = write_pdf(std::move(document), typesetter, file); !written)
      std::fprintf(stderr, "%s\n", written.fault().what.c_str());
  });
  cost.bytes = static_cast<double>(std::filesystem::file_size(file));
  cost.peak = bench::peak_memory();
  if (!std::getenv("STONEPROOF_KEEP")) std::filesystem::remove(file);
  return cost;
}

} // namespace

int main(int count, char **values) {
  const std::size_t most = count > 1 ? std::strtoul(values[1], nullptr, 10) : 1000;
  std::printf("%7s %7s %9s %11s %10s %11s %8s %11s %9s %13s\n", "pages", "sheets", "findings", "content ms",
              "layout ms", "writing ms", "all s", "before MB", "peak MB", "bytes a page");
  std::vector<std::pair<double, double>> points;
  for (const std::size_t pages : {100u, 300u, 1000u, 2000u}) {
    if (pages > most) break;
    const Cost cost = bench::apart([&] { return measured(pages); });
    const double all = cost.content + cost.layout + cost.writing;
    std::printf("%7zu %7zu %9zu %11.0f %10.0f %11.0f %8.2f %11.1f %9.1f %13.0f\n", pages, cost.sheets,
                cost.findings, cost.content, cost.layout, cost.writing, all / 1000, cost.before, cost.peak,
                cost.bytes / static_cast<double>(pages));
    points.emplace_back(static_cast<double>(pages), all);
  }
  std::printf("exponent of growth %.2f\n", bench::exponent(points));
}
