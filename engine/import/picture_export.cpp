// Picture streams -> files. The only way in is write_picture; tested in
// tests/engine/import/picture_export.test.cpp.
#include "engine/import/picture_export.h"

#include "engine/import/picture_codecs.h"
#include "engine/import/sample_layout.h"
#include "engine/picture/facts.h"

#include <algorithm>
#include <fstream>

namespace stoneproof::finished {

namespace {

constexpr std::size_t most_bytes = 1'500'000'000; ///< of one picture, decoded

Outcome<Done> write_bytes(const std::filesystem::path &file, std::string_view bytes) {
  std::ofstream stream(file, std::ios::binary);
  stream.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
  stream.close();
  if (!stream)
    return Fault{"the picture could not be written", file.string(),
                 "See that the folder can be written to and has room."};
  return Done{};
}

Decoded decoded_bytes(const PdfFile &file, const ImageSource &source, std::size_t limit) {
  if (!source.stands_in) return file.decoded(source.dictionary, limit);
  return decoded(source.bytes, source.dictionary["Filter"], source.dictionary["DecodeParms"], limit);
}

/// JPEG stands as it is; Exif's orientation, which a PDF does not heed, is told.
Outcome<Done> write_jpeg(const std::filesystem::path &folder, const std::string &stem, const Decoded &data,
                         const std::optional<Samples> &samples, WrittenPicture &written) {
  written.file = stem + ".jpg";
  Outcome<Done> done = write_bytes(folder / written.file, data.bytes);
  if (!done) return done;
  const auto facts = read_facts(folder / written.file);
  if (facts) written.orientation = facts.value().orientation;
  const bool bare = facts && !facts.value().profile && samples && !samples->space.icc.empty();
  if (!bare) return Done{};
  written.profile = stem + ".icc";
  return write_bytes(folder / written.profile, samples->space.icc);
}

Outcome<Done> write_fax(const std::filesystem::path &folder, const std::string &stem, const Decoded &data,
                        const Samples &samples, WrittenPicture &written) {
  const Object &how = data.parameters;
  FaxForm form;
  form.size = samples.size;
  // The rows are as wide as Columns says; where that is not the picture's width nothing sound can come of it.
  form.size.width = how["Columns"].whole_or(1728, 1, 1'000'000);
  form.k = how["K"].whole_or(0, -1'000'000, 1'000'000);
  form.byte_aligned = how["EncodedByteAlign"].flag(false);
  form.inverted = how["BlackIs1"].flag(false) != inverted(samples);
  written.file = stem + ".tif";
  return write_fax_tiff(folder / written.file, form, data.bytes);
}

/// The picture's own samples in place of those that the dictionary tells of.
Outcome<Done> write_decoded(const std::filesystem::path &folder, const std::string &stem,
                            DecodedPicture picture, Samples samples, WrittenPicture &written) {
  samples.size = picture.size;
  samples.bits = picture.bits;
  if (samples.space.channels != picture.channels)
    samples.space = {picture.channels == 1   ? Colours::gray
                     : picture.channels == 4 ? Colours::cmyk
                                             : Colours::rgb,
                     picture.channels == 2 ? 1 : picture.channels};
  written.file = stem + ".tif";
  const TiffRows rows = tiff_rows(samples, std::move(picture.rows));
  return write_tiff(folder / written.file, rows.form, rows.rows);
}

/// None: it is neither JPEG 2000 nor JBIG2, or broken.
std::optional<DecodedPicture> decoded_picture(const PdfFile &file, const Decoded &data) {
  if (data.codec == "JPXDecode") return decode_jpeg2000(data.bytes, most_pixels);
  if (data.codec != "JBIG2Decode") return std::nullopt;
  const Object globals = data.parameters["JBIG2Globals"];
  auto picture =
      decode_jbig2(data.bytes, globals.is_stream() ? file.decoded(globals, most_bytes).bytes : std::string());
  // The filter gives 0 for black, as a PDF's samples have it (ISO 32000-1, 7.4.7).
  if (picture)
    for (char &byte : picture->rows) byte = static_cast<char>(~byte);
  return picture;
}

std::string ending_of(const std::string &codec) {
  return codec == "JPXDecode" ? ".jp2" : codec == "JBIG2Decode" ? ".jb2" : ".data";
}

} // namespace

Outcome<WrittenPicture> write_picture(const PdfFile &file, const ImageSource &source,
                                      const std::filesystem::path &folder, const std::string &stem) {
  WrittenPicture written;
  const auto samples = samples_of(file, source.dictionary, source.colours);
  const std::size_t expected =
      samples ? samples->row_bytes() * static_cast<std::size_t>(samples->size.height) : 0;
  written.line_art = samples && (samples->stencil || samples->bits * samples->space.channels == 1);
  const Decoded data = decoded_bytes(file, source, std::min(most_bytes, expected + (std::size_t{64} << 20)));
  if (!source.stands_in) file.forget(source.dictionary);
  const auto done = [&]() -> Outcome<Done> {
    if (data.codec == "DCTDecode") return write_jpeg(folder, stem, data, samples, written);
    if (data.codec == "CCITTFaxDecode" && samples) return write_fax(folder, stem, data, *samples, written);
    if (data.codec.empty() && samples && expected <= most_bytes) {
      written.file = stem + ".tif";
      const TiffRows rows = tiff_rows(*samples, data.bytes.substr(0, expected));
      return write_tiff(folder / written.file, rows.form, rows.rows);
    }
    if (auto picture = decoded_picture(file, data))
      return write_decoded(folder, stem, std::move(*picture), samples.value_or(Samples{}), written);
    written.file = stem + ending_of(data.codec);
    return write_bytes(folder / written.file, data.bytes);
  }();
  if (!done) return done.fault();
  return written;
}

} // namespace stoneproof::finished
