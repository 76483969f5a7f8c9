// Makes and keeps press tables. The only way in is PressTables; tested in tests/engine/run.
#include "engine/run/press_tables.h"

namespace stoneproof {

const PressTable *PressTables::table(const std::vector<std::uint8_t> &icc, ProfileSpace space) {
  if (!press_) return nullptr;
  const std::lock_guard lock(mutex_);
  const auto [entry, is_new] = tables_.try_emplace({space, icc});
  if (!is_new) return entry->second.get();
  auto made = PressTable::make(icc, space, press_->icc, press_->difference);
  if (!made && !icc.empty()) made = PressTable::make({}, space, press_->icc, press_->difference);
  if (made) entry->second = std::make_unique<const PressTable>(std::move(made).value());
  return entry->second.get();
}

} // namespace stoneproof
