// The default configuration of optional content. The only way in is Layers; tested in
// tests/engine/import/read_pages.test.cpp.
#include "engine/import/layers.h"

namespace stoneproof::finished {

Layers::Layers(const Object &catalog) {
  const Object properties = catalog["OCProperties"], as_opened = properties["D"];
  for (std::size_t i = 0; i < properties["OCGs"].size(); ++i) listed_.insert(properties["OCGs"].at(i).id());
  if (as_opened["BaseState"].name() == "OFF") off_ = listed_;
  for (std::size_t i = 0; i < as_opened["ON"].size(); ++i) off_.erase(as_opened["ON"].at(i).id());
  for (std::size_t i = 0; i < as_opened["OFF"].size(); ++i) off_.insert(as_opened["OFF"].at(i).id());
}

bool Layers::show(const Object &content) const {
  if (content["Type"].name() != "OCMD") return group_shows(content);
  const Object groups = content["OCGs"];
  const std::size_t count = groups.is_array() ? groups.size() : groups ? 1 : 0;
  const std::string policy = content["P"].name();
  std::size_t on = 0, listed = 0;
  for (std::size_t i = 0; i < count; ++i) {
    const Object group = groups.is_array() ? groups.at(i) : groups;
    if (listed_.count(group.id()) == 0) continue;
    ++listed;
    on += group_shows(group);
  }
  if (listed == 0) return true;
  if (policy == "AllOn") return on == listed;
  if (policy == "AnyOff") return on < listed;
  if (policy == "AllOff") return on == 0;
  return on > 0;
}

} // namespace stoneproof::finished
