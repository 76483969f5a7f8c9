// The conversions from the pictures' colours to the press, each made once for all pictures that share a
// profile.
#pragma once

#include "engine/colour/press_table.h"
#include "engine/press/press_sheet.h"

#include <map>
#include <memory>
#include <mutex>
#include <utility>
#include <vector>

namespace stoneproof {

/// May be asked by many threads at once.
class PressTables {
public:
  /// Without a profile on the press sheet there are no tables.
  explicit PressTables(std::shared_ptr<const PressProfile> press) : press_(std::move(press)) {}

  /// The table for a picture's own profile (empty: none) and space, or null: no press profile, or a space
  /// that is not converted. A profile that cannot be used counts as none: sRGB is then assumed, as the trade
  /// does.
  const PressTable *table(const std::vector<std::uint8_t> &icc, ProfileSpace space);

private:
  using Key = std::pair<ProfileSpace, std::vector<std::uint8_t>>;
  std::shared_ptr<const PressProfile> press_;
  std::mutex mutex_;
  std::map<Key, std::unique_ptr<const PressTable>> tables_;
};

} // namespace stoneproof
