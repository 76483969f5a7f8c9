// Each file tries one thing that a reader could break at.
#include "tests/support/crafted_tables.h"
#include "tests/support/made_pdf.h"
#include "tests/support/mangled_pdf.h"

#include <zlib.h>

namespace stoneproof::test {

namespace {

std::string repeated(std::string_view part, int times) {
  std::string text;
  for (int i = 0; i < times; ++i) text += part;
  return text;
}

std::string ref(int number) { return std::to_string(number) + " 0 R"; }

/// Spaces, deflated: about a thousandth of their number. One block that ends at a byte, as often as it takes.
std::string deflated_spaces(std::size_t megabytes) {
  const std::string spaces(1 << 20, ' ');
  z_stream stream{};
  deflateInit(&stream, 9);
  std::string out(1 << 16, '\0');
  stream.next_out = reinterpret_cast<Bytef *>(out.data());
  stream.avail_out = static_cast<uInt>(out.size());
  std::string once;
  for (int i = 0; i < 2; ++i) { // the second block has no header of the stream before it
    const std::size_t from = out.size() - stream.avail_out;
    stream.next_in = const_cast<Bytef *>(reinterpret_cast<const Bytef *>(spaces.data()));
    stream.avail_in = static_cast<uInt>(spaces.size());
    deflate(&stream, Z_FULL_FLUSH);
    once = out.substr(from, out.size() - stream.avail_out - from);
  }
  deflateEnd(&stream);
  std::string all = out.substr(0, 2);
  for (std::size_t i = 0; i < megabytes; ++i) all += once;
  return all;
}

std::string deflated(const std::string &bytes) {
  uLongf size = compressBound(static_cast<uLong>(bytes.size()));
  std::string out(size, '\0');
  compress(reinterpret_cast<Bytef *>(out.data()), &size, reinterpret_cast<const Bytef *>(bytes.data()),
           static_cast<uLong>(bytes.size()));
  out.resize(size);
  return out;
}

/// A page with this entry in its dictionary in place of contents.
std::string page_with(MadePdf pdf, const std::string &entries,
                      const std::string &pages_entries = "/Count 1") {
  const int pages = pdf.add("");
  const int page = pdf.add("<</Type/Page/Parent " + ref(pages) + entries + ">>");
  pdf.set(pages, "<</Type/Pages/Kids[" + ref(page) + "]/MediaBox[0 0 300 200]" + pages_entries + ">>");
  return pdf.text(pdf.add("<</Type/Catalog/Pages " + ref(pages) + ">>"));
}

std::string bomb(const std::string &bytes, const std::string &filters) {
  MadePdf pdf;
  return page_with(pdf, "/Contents " + ref(pdf.stream("/Filter" + filters, bytes)));
}

/// A page whose form /F is object 1, made of `content`, with these resources.
std::string form_page(const std::string &content, const std::string &resources,
                      const std::string &page_content, MadePdf pdf = {}) {
  pdf.set(1, "<</Type/XObject/Subtype/Form/BBox[0 0 100 100]/Resources<<" + resources + ">>/Length " +
                 std::to_string(content.size()) + ">>\nstream\n" + content + "\nendstream");
  return one_page(pdf, page_content, "/XObject<</F 1 0 R>>");
}

MadePdf one_object() {
  MadePdf pdf;
  pdf.add("");
  return pdf;
}

/// Forms that each draw the next one twice.
std::string forms_that_double(int forms) {
  MadePdf pdf;
  for (int i = 1; i <= forms; ++i)
    pdf.stream("/Type/XObject/Subtype/Form/BBox[0 0 100 100]/Resources<</XObject<</F " + ref(i + 1) + ">>>>",
               "/F Do /F Do");
  pdf.stream("/Type/XObject/Subtype/Form/BBox[0 0 100 100]", "0 0 10 10 re f");
  return one_page(pdf, "/F Do", "/XObject<</F 1 0 R>>");
}

std::string image_page(const std::string &dictionary, const std::string &content,
                       const std::string &more = {}) {
  MadePdf pdf;
  if (!more.empty()) pdf.add(more);
  const int image = pdf.stream("/Type/XObject/Subtype/Image" + dictionary, "abcdefgh");
  return one_page(pdf, content, "/XObject<</I " + ref(image) + ">>");
}

std::string last_table(const std::string &pdf) {
  const std::size_t at = pdf.rfind("startxref\n") + 10;
  return pdf.substr(at, pdf.find('\n', at) - at);
}

/// Tells of a table before its own.
void add_previous(std::string &pdf, const std::string &table) {
  pdf.insert(pdf.rfind(">>\nstartxref"), "/Prev " + table);
}

std::string table_in_a_circle() {
  std::string pdf = one_page({}, "0 0 10 10 re f");
  add_previous(pdf, last_table(pdf));
  return pdf;
}

std::string two_tables_in_a_circle() {
  std::string pdf = one_page({}, "0 0 10 10 re f");
  const std::string first = last_table(pdf);
  const std::string second = std::to_string(pdf.size() + 6 + 4); // as the entry itself makes the file longer
  add_previous(pdf, second);
  const std::size_t trailer = pdf.rfind("trailer");
  const std::string entries = pdf.substr(trailer + 10, pdf.find("/Prev", trailer) - trailer - 10);
  return pdf + "xref\n0 0\ntrailer\n<<" + entries + "/Prev " + first + ">>\nstartxref\n" + second +
         "\n%%EOF\n";
}

std::vector<CraftedPdf> crafted_structure() {
  MadePdf loop = one_object();
  loop.set(1, "1 0 R");
  MadePdf tree = one_object();
  tree.set(1, "<</Type/Pages/Kids[1 0 R 1 0 R]/Count 2>>");
  MadePdf labels = one_object();
  labels.set(1, "<</Kids[" + repeated("1 0 R ", 1'000) + "]>>");
  MadePdf negative;
  negative.add("<</Length -1>>\nstream\n0 0 9 9 re f\nendstream");
  return {
      {"30,000 dictionaries within each other",
       page_with({}, "/A" + repeated("<</A", 30'000) + " 1" + repeated(">>", 30'000))},
      {"30,000 arrays within each other",
       page_with({}, "/A" + repeated("[", 30'000) + repeated("]", 30'000))},
      {"a count of 1,000,000,000 pages", page_with({}, "", "/Count 1000000000")},
      {"a count of -5 pages", page_with({}, "", "/Count -5")},
      {"contents that are an empty list", page_with({}, "/Contents[]")},
      {"contents that are an object that is itself", page_with(loop, "/Contents 1 0 R")},
      {"a page tree that holds itself", tree.text(tree.add("<</Type/Catalog/Pages 1 0 R>>"))},
      {"labels that hold themselves a thousand times", one_page(labels, "n", {}, {}, "/PageLabels 1 0 R")},
      {"a table whose predecessor is itself", table_in_a_circle()},
      {"two tables that are each other's predecessor", two_tables_in_a_circle()},
      {"a stream of a negative length", page_with(negative, "/Contents 1 0 R")},
      {"boxes of no size, and of numbers without end",
       page_with({}, "/MediaBox[0 0 0 0]/CropBox[-1 -1 " + std::string(400, '9') + " 1]/TrimBox[1 2]")},
  };
}

std::vector<CraftedPdf> crafted_content() {
  const std::string endless(400, '9');
  MadePdf chain;
  for (int i = 1; i <= 2'000; ++i)
    chain.stream("/Type/XObject/Subtype/Form/BBox[0 0 9 9]/Resources<</XObject<</F " + ref(i + 1) + ">>>>",
                 "/F Do");
  return {
      {"content of 1 GB from 1 MB", bomb(deflated_spaces(1'000), "/FlateDecode")},
      {"content of 1 GB from a few KB", bomb(deflated(deflated_spaces(1'000)), "[/FlateDecode/FlateDecode]")},
      {"a form of 60 MB that is drawn a thousand times",
       [] {
         MadePdf pdf;
         pdf.stream("/Type/XObject/Subtype/Form/BBox[0 0 9 9]/Filter/FlateDecode", deflated_spaces(60));
         return one_page(pdf, repeated("/F Do ", 1'000), "/XObject<</F 1 0 R>>");
       }()},
      {"a form that draws itself", form_page("/F Do", "/XObject<</F 1 0 R>>", "/F Do", one_object())},
      {"forms that each draw the next one twice", forms_that_double(30)},
      {"2,000 forms in each other", one_page(chain, "/F Do", "/XObject<</F 1 0 R>>")},
      {"100,000 saves", one_page({}, repeated("q ", 100'000) + "0 0 10 10 re f")},
      {"100,000 restores", one_page({}, repeated("Q ", 100'000) + "0 0 10 10 re f")},
      {"100,000 clips, each turned",
       one_page({}, repeated("0.9998 0.0175 -0.0175 0.9998 0 0 cm -90 -90 180 180 re W n ", 100'000))},
      {"matrices that are no numbers",
       image_page("/Width 1/Height 1/BitsPerComponent 8/ColorSpace/DeviceGray",
                  "nan nan nan nan nan nan cm /I Do " + endless + " 0 0 " + endless + " 0 0 cm /I Do " +
                      endless + " 0 0 " + endless + " 0 0 cm /I Do")},
      {"pictures of no area",
       image_page("/Width 1/Height 1/BitsPerComponent 8/ColorSpace/DeviceGray",
                  "q 0 0 0 0 10 10 cm /I Do Q q 10 0 0 0 10 10 cm /I Do Q q 10 10 10 10 0 0 cm /I Do Q")},
      {"a picture without a pixel", image_page("/Width 0/Height 0", "10 0 0 10 0 0 cm /I Do")},
      {"a picture of a billion by a billion pixels",
       image_page("/Width 1000000000/Height 1000000000/BitsPerComponent 8/ColorSpace/DeviceRGB",
                  "10 0 0 10 0 0 cm /I Do")},
      {"a picture of 30,000 by 30,000 pixels with eight bytes",
       image_page("/Width 30000/Height 30000/BitsPerComponent 16/ColorSpace/DeviceCMYK",
                  "10 0 0 10 0 0 cm /I Do")},
      {"a palette whose base is itself", image_page("/Width 2/Height 2/BitsPerComponent 8/ColorSpace 1 0 R",
                                                    "10 0 0 10 0 0 cm /I Do", "[/Indexed 1 0 R 255 (abc)]")},
      {"a prediction of a billion columns",
       image_page("/Width 2/Height 2/BitsPerComponent 8/ColorSpace/DeviceGray/Filter/FlateDecode/DecodeParms"
                  "<</Predictor 15/Columns 1000000000/Colors 64>>",
                  "10 0 0 10 0 0 cm /I Do")},
      {"widths of all codes a thousand times",
       one_page({}, "BT /F 12 Tf (a) Tj ET",
                "/Font<</F<</Type/Font/Subtype/Type0/DescendantFonts[<</W[" +
                    repeated("0 65535 500 ", 1'000) + "]>>]>>>>")},
      {"a map that gives every code a long text",
       [] {
         MadePdf pdf;
         pdf.stream("", "1 beginbfrange <0000> <ffff> <" + std::string(200'000, '4') + "> endbfrange");
         return one_page(pdf, "BT /F 12 Tf (a) Tj ET",
                         "/Font<</F<</Type/Font/Subtype/Type1/ToUnicode 1 0 R>>>>");
       }()},
      {"text that is larger than the world",
       one_page({}, "BT /F " + endless + " Tf " + endless + " Tc (abc) Tj ET",
                "/Font<</F<</Type/Font/Subtype/Type1>>>>")},
  };
}

} // namespace

std::vector<CraftedPdf> crafted_pdfs() {
  std::vector<CraftedPdf> all = crafted_structure();
  for (CraftedPdf &one : crafted_tables()) all.push_back(std::move(one));
  for (CraftedPdf &one : crafted_content()) all.push_back(std::move(one));
  return all;
}

} // namespace stoneproof::test
