#include <utility>

#include "packing/packing.hpp"

namespace bulbwright {
namespace {

std::vector<double> key_of(double question, const Section& section, std::span<const PackKind> kinds,
                           Millimetres gap, Millimetres wall, Effort effort, Arrange arrange) {
  std::vector<double> key{question,
                          static_cast<double>(section.shape),
                          section.length.value(),
                          section.width.value(),
                          section.corner.value(),
                          gap.value(),
                          wall.value(),
                          static_cast<double>(effort),
                          static_cast<double>(arrange)};
  for (const PackKind& kind : kinds) {
    key.insert(key.end(), {kind.diameter.value(), kind.share, static_cast<double>(kind.count)});
  }
  return key;
}

}  // namespace

PackingCache::Entry& PackingCache::entry(std::vector<double> key) {
  const std::lock_guard lock{mutex_};
  return known_[std::move(key)];
}

const Packing& PackingCache::most(const Section& section, std::span<const PackKind> kinds,
                                  Millimetres gap, Millimetres wall, Effort effort,
                                  Arrange arrange) {
  Entry& asked = entry(key_of(0.0, section, kinds, gap, wall, effort, arrange));
  std::call_once(asked.solved,
                 [&] { asked.packing = pack_most(section, kinds, gap, wall, effort, arrange); });
  return asked.packing;
}

const Packing& PackingCache::count(const Section& section, std::span<const PackKind> kinds,
                                   Millimetres least_gap, Millimetres wall, Effort effort,
                                   Arrange arrange) {
  Entry& asked = entry(key_of(1.0, section, kinds, least_gap, wall, effort, arrange));
  std::call_once(asked.solved, [&] {
    asked.packing = place_count(section, kinds, least_gap, wall, effort, arrange);
  });
  return asked.packing;
}

}  // namespace bulbwright
