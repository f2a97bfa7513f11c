#include "season/make_room.hpp"

#include <algorithm>
#include <map>
#include <tuple>

#include "season/refrigerator.hpp"

namespace bulbwright {
namespace {

/// Plans made anew for one number of weeks: pots with less in the refrigerator come first.
constexpr std::size_t plans_to_fit = 4, plans_to_help = 2;
/// Weeks later that are tried where several changes are needed.
constexpr int weeks_to_help[] = {1, 2, 4, most_weeks_later};

/// The bags of a season by pot and by kind, and the days of the refrigerator, as they are changed.
class Room {
 public:
  Room(std::span<const Bag> bags, std::size_t pots, Litres capacity)
      : of_pot_(pots), days_{bags}, capacity_{capacity} {
    for (const Bag& bag : bags) {
      if (!bag.potted) of_pot_[bag.pot].push_back(bag);
    }
  }

  [[nodiscard]] double excess() const { return days_.excess(capacity_); }
  [[nodiscard]] Litres lacking() const {
    return Litres{std::max(0.0, rounded((days_.most() - capacity_).value(), litre_step))};
  }
  [[nodiscard]] const std::vector<Bag>& of_pot(std::size_t pot) const { return of_pot_[pot]; }
  [[nodiscard]] std::size_t pots() const { return of_pot_.size(); }

  /// What would be beyond the capacity without `out` and with `in`.
  [[nodiscard]] double excess_with(std::span<const Bag> out, std::span<const Bag> in) {
    swap(out, in);
    const double sum = excess();
    swap(in, out);
    return sum;
  }
  void replace(std::size_t pot, std::vector<Bag> bags) {
    swap(of_pot_[pot], bags);
    of_pot_[pot] = std::move(bags);
  }

  [[nodiscard]] std::vector<FridgeOverflow> overflow() const { return days_.overflow(capacity_); }
  /// A bag of the pot lies in the refrigerator on one of these days.
  [[nodiscard]] bool is_in(std::size_t pot, std::span<const FridgeOverflow> over) const {
    return std::any_of(of_pot_[pot].begin(), of_pot_[pot].end(), [&](const Bag& bag) {
      return std::any_of(over.begin(), over.end(), [&](const FridgeOverflow& days) {
        return bag.in <= days.to && days.from < bag.out;
      });
    });
  }

 private:
  void swap(std::span<const Bag> out, std::span<const Bag> in) {
    for (const Bag& bag : out) days_.remove(bag);
    for (const Bag& bag : in) days_.add(bag);
  }

  std::vector<std::vector<Bag>> of_pot_;
  FridgeDays days_;
  Litres capacity_;
};

std::vector<Bag> moved(std::vector<Bag> bags, int days) {
  for (Bag& bag : bags) {
    bag.in = bag.in + days;
    bag.out = bag.out + days;
  }
  return bags;
}

std::vector<Bag> dry_bags(const Plan& plan, std::size_t pot, const Catalogue& catalogue) {
  std::vector<Bag> bags = bags_of(plan, pot, catalogue);
  std::erase_if(bags, [](const Bag& bag) { return bag.potted; });
  return bags;
}

int flowering_kinds(const Plan& plan) {
  return static_cast<int>(
      std::count_if(plan.waves.begin(), plan.waves.end(),
                    [](const PlannedWave& wave) { return wave.flowers && wave.confident; }));
}

bool may_wait(const SeasonPot& pot) {
  return pot.ok() && !pot.plan->wanted;
}

/// A change with what the pots' bags become.
struct Found {
  RoomChange change;
  std::map<std::size_t, std::vector<Bag>> bags;
  double excess = 0.0;
};

/// The search over single changes of a room.
class Search {
 public:
  Search(std::span<const SeasonPot> pots, const Catalogue& catalogue, const Replan& replan,
         Room& room)
      : pots_{pots}, catalogue_{catalogue}, replan_{replan}, room_{room} {}

  /// The best pot of those that planted so many weeks later leave no overflow, or the least.
  std::optional<Found> later(int weeks, bool must_fit) {
    const std::vector<FridgeOverflow> over = room_.overflow();
    const double now = room_.excess();
    std::vector<std::tuple<double, double, std::size_t>> tries;
    for (std::size_t pot = 0; pot < room_.pots(); ++pot) {
      const std::vector<Bag>& bags = room_.of_pot(pot);
      if (bags.empty() || !may_wait(pots_[pot]) || moved_before(pot) || !room_.is_in(pot, over))
        continue;
      const double excess = room_.excess_with(bags, moved(bags, 7 * weeks));
      if (must_fit ? excess > 0.0 : excess >= now) continue;
      double litres = 0.0;
      for (const Bag& bag : bags) litres += bag.litres.value();
      tries.emplace_back(excess, litres, pot);
    }
    std::sort(tries.begin(), tries.end());
    tries.resize(std::min(tries.size(), must_fit ? plans_to_fit : plans_to_help));
    std::optional<Found> best;
    for (const auto& [guess, litres, pot] : tries) {
      std::optional<Found> found = replanned(pot, 7 * weeks);
      if (!found || (must_fit ? found->excess > 0.0 : found->excess >= now)) continue;
      if (!best || std::tuple{found->excess, lost(found->change)} <
                       std::tuple{best->excess, lost(best->change)})
        best = std::move(found);
    }
    return best;
  }

  /// The fewest bulbs of one kind to be bought precooled that leave no overflow, or the kind that
  /// leaves the least.
  std::optional<Found> precooled(bool must_fit) {
    std::map<std::string, std::vector<std::size_t>> pots_of;
    for (std::size_t pot = 0; pot < room_.pots(); ++pot) {
      for (const Bag& bag : room_.of_pot(pot)) {
        std::vector<std::size_t>& pots = pots_of[bag.taxon];
        if (bag.to_buy && (pots.empty() || pots.back() != pot)) pots.push_back(pot);
      }
    }
    const double now = room_.excess();
    std::optional<Found> best;
    const auto consider = [&](Found found) {
      if (must_fit ? found.excess > 0.0 : found.excess >= now) return;
      const auto key = [](const Found& f) {
        return std::tuple{f.excess, f.change.bulbs, f.change.pots};
      };
      if (!best || key(found) < key(*best)) best = std::move(found);
    };
    for (const auto& [taxon, pots] : pots_of) {
      for (const std::size_t pot : pots) consider(without(taxon, {pot}));
      if (pots.size() > 1) consider(without(taxon, pots));
    }
    return best;
  }

  void take(const Found& found) {
    for (const auto& [pot, bags] : found.bags) room_.replace(pot, bags);
    if (found.change.sort == RoomChange::Sort::plant_later)
      moved_.push_back(found.change.pots.front());
  }

 private:
  static int lost(const RoomChange& change) {
    return change.days_in_flower_before - change.days_in_flower;
  }
  [[nodiscard]] bool moved_before(std::size_t pot) const {
    return std::find(moved_.begin(), moved_.end(), pot) != moved_.end();
  }

  std::optional<Found> replanned(std::size_t pot, int days) {
    const Plan& now = *pots_[pot].plan;
    const std::shared_ptr<const Plan> then = replan_(pot, now.plant + days);
    if (!then || !then->ok || flowering_kinds(*then) < flowering_kinds(now)) return std::nullopt;
    Found found;
    found.change.pots = {pot};
    found.change.plant_before = now.plant;
    found.change.plant = then->plant;
    found.change.days_in_flower_before = now.display.days_in_flower;
    found.change.days_in_flower = then->display.days_in_flower;
    found.bags[pot] = dry_bags(*then, pot, catalogue_);
    found.excess = room_.excess_with(room_.of_pot(pot), found.bags[pot]);
    return found;
  }

  Found without(const std::string& taxon, const std::vector<std::size_t>& pots) {
    Found found;
    found.change.sort = RoomChange::Sort::buy_precooled;
    found.change.taxon = taxon;
    found.change.pots = pots;
    std::vector<Bag> out;
    for (const std::size_t pot : pots) {
      for (const Bag& bag : room_.of_pot(pot)) {
        if (bag.taxon != taxon || !bag.to_buy) {
          found.bags[pot].push_back(bag);
          continue;
        }
        found.bags.try_emplace(pot);
        found.change.name = bag.name;
        found.change.bulbs += bag.bulbs;
        out.push_back(bag);
      }
    }
    found.excess = room_.excess_with(out, {});
    return found;
  }

  std::span<const SeasonPot> pots_;
  const Catalogue& catalogue_;
  const Replan& replan_;
  Room& room_;
  std::vector<std::size_t> moved_;
};

/// Of one pot waiting and one kind bought otherwise, the one that leaves less.
std::optional<Found> most_helpful(Search& search) {
  std::optional<Found> best = search.precooled(false);
  for (const int weeks : weeks_to_help) {
    std::optional<Found> later = search.later(weeks, false);
    if (later && (!best || later->excess < best->excess)) best = std::move(later);
  }
  return best;
}

}  // namespace

RoomAdvice advise_room(std::span<const SeasonPot> pots, std::span<const Bag> bags, Litres capacity,
                       const Catalogue& catalogue, const Replan& replan) {
  RoomAdvice advice;
  Room room{bags, pots.size(), capacity};
  if (room.excess() <= 0.0) return advice;
  Search search{pots, catalogue, replan, room};
  for (int weeks = 1; weeks <= most_weeks_later && !advice.later; ++weeks) {
    if (const auto found = search.later(weeks, true)) advice.later = found->change;
  }
  if (const auto found = search.precooled(true)) advice.precooled = found->change;
  if (advice.later || advice.precooled) return advice;
  while (room.excess() > 0.0 && advice.together.size() < most_changes) {
    const auto found = most_helpful(search);
    if (!found) break;
    advice.together.push_back(found->change);
    search.take(*found);
  }
  advice.still_lacking = room.lacking();
  return advice;
}

}  // namespace bulbwright
