// Describes the document. The only ways in are the functions of document_parts.h; tested in
// tests/reports/pdf/write_pdf.test.cpp.
#include "reports/pdf/document_parts.h"

#include "engine/xml/characters.h"

namespace stoneproof::pdf {
namespace {

constexpr const char *producer = "stoneproof";

std::string default_language(const char *property, std::string_view text) {
  if (text.empty()) return "";
  const std::string name = property;
  return "<" + name + "><rdf:Alt><rdf:li xml:lang=\"x-default\">" + xml_escaped(text) +
         "</rdf:li></rdf:Alt></" + name + ">\n";
}

} // namespace

std::string xmp_packet(const layout::Document &document) {
  std::string out = "<?xpacket begin=\"\xEF\xBB\xBF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n"
                    "<x:xmpmeta xmlns:x=\"adobe:ns:meta/\">\n"
                    "<rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">\n"
                    "<rdf:Description rdf:about=\"\" xmlns:dc=\"http://purl.org/dc/elements/1.1/\""
                    " xmlns:xmp=\"http://ns.adobe.com/xap/1.0/\" xmlns:pdf=\"http://ns.adobe.com/pdf/1.3/\"";
  // Nobody can promise for pages that come from elsewhere.
  out += document.foreign_pages
             ? ">\n"
             : " xmlns:pdfaid=\"http://www.aiim.org/pdfa/ns/id/\">\n"
               "<pdfaid:part>3</pdfaid:part>\n<pdfaid:conformance>B</pdfaid:conformance>\n";
  out += "<dc:format>application/pdf</dc:format>\n";
  out += default_language("dc:title", document.title) + default_language("dc:description", document.subject);
  if (!document.language.empty())
    out += "<dc:language><rdf:Bag><rdf:li>" + xml_escaped(document.language) +
           "</rdf:li></rdf:Bag></dc:language>\n";
  out += "<xmp:CreatorTool>" + std::string(producer) + "</xmp:CreatorTool>\n";
  out += "<pdf:Producer>" + std::string(producer) + "</pdf:Producer>\n";
  if (document.made_at) {
    const std::string date = xmp_date(*document.made_at);
    out += "<xmp:CreateDate>" + date + "</xmp:CreateDate>\n<xmp:ModifyDate>" + date + "</xmp:ModifyDate>\n";
  }
  return out + "</rdf:Description>\n</rdf:RDF>\n</x:xmpmeta>\n<?xpacket end=\"r\"?>";
}

Entries information(const layout::Document &document) {
  Entries info{{"Title", text_string(document.title)},
               {"Creator", text_string(producer)},
               {"Producer", text_string(producer)},
               {"Fingerprint", text_string(document.fingerprint)}};
  if (!document.subject.empty()) info.emplace_back("Subject", text_string(document.subject));
  if (document.made_at) {
    info.emplace_back("CreationDate", date_string(*document.made_at));
    info.emplace_back("ModDate", date_string(*document.made_at));
  }
  return info;
}

std::string write_metadata(ObjectFile &file, const layout::Document &document) {
  const ObjectNumber packet = file.reserve();
  // Not compressed, so that a tool that knows no PDF can find it.
  file.write_stream(packet, {{"Type", "/Metadata"}, {"Subtype", "/XML"}}, xmp_packet(document), Compress::no);
  return reference(packet);
}

} // namespace stoneproof::pdf
