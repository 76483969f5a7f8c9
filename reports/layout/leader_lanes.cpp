// Lanes in groups that have to do with each other, each group with the widest distance that its room allows.
// The only way in is spread_lanes; tested in tests/reports/layout.
#include "reports/layout/leader_lanes.h"

#include <algorithm>
#include <numeric>

namespace stoneproof::layout {

namespace {

struct Group {
  std::vector<std::size_t> lanes;
  std::vector<LaneOrder> by_after, by_before; ///< the same orders, ascending by the one and by the other
};

std::vector<Group> groups_of(std::size_t count, std::vector<LaneOrder> orders) {
  std::vector<std::size_t> towards(count);
  std::iota(towards.begin(), towards.end(), std::size_t{0});
  const auto head = [&](std::size_t lane) {
    while (towards[lane] != lane) lane = towards[lane] = towards[towards[lane]];
    return lane;
  };
  for (const LaneOrder &order : orders) towards[head(order.before)] = head(order.after);
  std::vector<Group> by_head(count);
  for (std::size_t lane = 0; lane < count; ++lane) by_head[head(lane)].lanes.push_back(lane);
  std::sort(orders.begin(), orders.end(), [](const auto &a, const auto &b) { return a.after < b.after; });
  for (const LaneOrder &order : orders) by_head[head(order.after)].by_after.push_back(order);
  std::sort(orders.begin(), orders.end(), [](const auto &a, const auto &b) { return a.before < b.before; });
  for (const LaneOrder &order : orders) by_head[head(order.before)].by_before.push_back(order);
  std::erase_if(by_head, [](const Group &group) { return group.lanes.empty(); });
  return by_head;
}

/// The lanes of a group at one distance.
class Spreading {
public:
  Spreading(const std::vector<Lane> &lanes, const Group &group, Length apart, bool bounded)
      : lanes_(lanes), group_(group), apart_(apart), bounded_(bounded) {}

  /// Fills in the group's places; false: there is no room.
  bool into(std::vector<Length> &at) const {
    std::vector<Length> falling = at, rising = at;
    for (const std::size_t lane : group_.lanes) falling[lane] = rising[lane] = lanes_[lane].wanted;
    push_up(falling), push_down(falling);
    push_down(rising), push_up(rising);
    if (bounded_)
      for (const std::size_t lane : group_.lanes)
        if (falling[lane] < low(lane) || rising[lane] > high(lane)) return false;
    for (const std::size_t lane : group_.lanes) at[lane] = (falling[lane] + rising[lane]) / 2;
    return true;
  }

private:
  Length low(std::size_t lane) const { return lanes_[lane].low + margin(lane); }
  Length high(std::size_t lane) const { return lanes_[lane].high - margin(lane); }
  /// Half a distance from what bounds the lane, or what a narrow room has.
  Length margin(std::size_t lane) const {
    return std::min(apart_ / 2, (lanes_[lane].high - lanes_[lane].low) / 2);
  }

  void push_up(std::vector<Length> &at) const {
    if (bounded_)
      for (const std::size_t lane : group_.lanes) at[lane] = std::max(at[lane], low(lane));
    for (const LaneOrder &order : group_.by_after)
      at[order.after] = std::max(at[order.after], at[order.before] + apart_);
  }
  void push_down(std::vector<Length> &at) const {
    if (bounded_)
      for (const std::size_t lane : group_.lanes) at[lane] = std::min(at[lane], high(lane));
    for (auto order = group_.by_before.rbegin(); order != group_.by_before.rend(); ++order)
      at[order->before] = std::min(at[order->before], at[order->after] - apart_);
  }

  const std::vector<Lane> &lanes_;
  const Group &group_;
  Length apart_;
  bool bounded_;
};

} // namespace

std::vector<Length> spread_lanes(const std::vector<Lane> &lanes, const std::vector<LaneOrder> &orders,
                                 Length least) {
  std::vector<Length> at(lanes.size());
  for (const Group &group : groups_of(lanes.size(), orders)) {
    bool placed = false;
    for (const double share : {2.0, 1.4, 1.0, 0.7, 0.5, 0.35})
      if (!placed) placed = Spreading(lanes, group, least * share, true).into(at);
    if (!placed) Spreading(lanes, group, least, false).into(at);
  }
  return at;
}

} // namespace stoneproof::layout
