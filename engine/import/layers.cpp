// The default configuration of optional content. The only way in is Layers; tested in
// tests/engine/import/read_pages.test.cpp.
#include "engine/import/layers.h"

namespace stoneproof::finished {

Layers::Layers(const Object &catalog) {
  const Object properties = catalog["OCProperties"], as_opened = properties["D"];
  if (as_opened["BaseState"].name() == "OFF")
    for (std::size_t i = 0; i < properties["OCGs"].size(); ++i) off_.insert(properties["OCGs"].at(i).id());
  for (std::size_t i = 0; i < as_opened["ON"].size(); ++i) off_.erase(as_opened["ON"].at(i).id());
  for (std::size_t i = 0; i < as_opened["OFF"].size(); ++i) off_.insert(as_opened["OFF"].at(i).id());
}

bool Layers::show(const Object &content) const {
  if (content["Type"].name() != "OCMD") return group_shows(content);
  const Object groups = content["OCGs"];
  if (!groups.is_array()) return !groups || group_shows(groups);
  const std::string policy = content["P"].name();
  std::size_t on = 0;
  for (std::size_t i = 0; i < groups.size(); ++i) on += group_shows(groups.at(i));
  if (groups.size() == 0) return true;
  if (policy == "AllOn") return on == groups.size();
  if (policy == "AnyOff") return on < groups.size();
  if (policy == "AllOff") return on == 0;
  return on > 0;
}

} // namespace stoneproof::finished
