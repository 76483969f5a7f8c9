// Writes the output intent and the attachments. The only ways in are the functions of archive_parts.h; tested
// in tests/reports/pdf/archive.test.cpp.
#include "reports/pdf/archive_parts.h"

#include "engine/colour/srgb_profile.h"

#include <algorithm>

namespace stoneproof::pdf {
namespace {

std::string file_parameters(const layout::Attachment &attachment, const layout::Document &document) {
  std::string out = "<</Size " + std::to_string(attachment.bytes.size());
  if (document.made_at) out += "/ModDate" + date_string(*document.made_at);
  return out + ">>";
}

ObjectNumber write_attachment(ObjectFile &file, const layout::Attachment &attachment,
                              const layout::Document &document) {
  const ObjectNumber stream = file.reserve(), specification = file.reserve();
  file.write_stream(stream,
                    {{"Type", "/EmbeddedFile"},
                     {"Subtype", name(attachment.media_type)},
                     {"Params", file_parameters(attachment, document)}},
                    attachment.bytes, Compress::yes);
  const std::string named = text_string(attachment.name);
  file.set(specification, {{"Type", "/Filespec"},
                           {"F", named},
                           {"UF", named},
                           {"Desc", text_string(attachment.description)},
                           {"AFRelationship", "/Data"}, // what the document was made from
                           {"EF", "<</F " + reference(stream) + "/UF " + reference(stream) + ">>"}});
  return specification;
}

} // namespace

std::string write_output_intents(ObjectFile &file) {
  const ObjectNumber profile = file.reserve(), intent = file.reserve();
  const std::vector<std::uint8_t> icc = srgb_profile();
  file.write_stream(profile, {{"N", "3"}}, {reinterpret_cast<const char *>(icc.data()), icc.size()},
                    Compress::yes);
  file.set(intent, {{"Type", "/OutputIntent"},
                    {"S", "/GTS_PDFA1"},
                    {"OutputConditionIdentifier", "(sRGB IEC61966-2.1)"},
                    {"RegistryName", "(http://www.color.org)"},
                    {"Info", "(sRGB IEC61966-2.1)"},
                    {"DestOutputProfile", reference(profile)}});
  return "[" + reference(intent) + "]";
}

Entries write_attachments(ObjectFile &file, const layout::Document &document) {
  if (document.attachments.empty()) return {};
  std::vector<std::pair<std::string, ObjectNumber>> all;
  for (const layout::Attachment &attachment : document.attachments)
    all.emplace_back(attachment.name, write_attachment(file, attachment, document));
  std::sort(all.begin(), all.end()); // a name tree is in order
  std::string names, references;
  for (const auto &[file_name, specification] : all) {
    names += text_string(file_name) + reference(specification) + " ";
    references += reference(specification) + " ";
  }
  return {{"Names", "<</EmbeddedFiles<</Names[" + names + "]>>>>"}, {"AF", "[" + references + "]"}};
}

} // namespace stoneproof::pdf
