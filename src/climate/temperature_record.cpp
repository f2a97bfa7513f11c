#include "climate/temperature_record.hpp"

#include <algorithm>
#include <cassert>

namespace bulbwright {
namespace {

constexpr std::size_t gaps_listed = 20;

double between(double a, double b, double share) {
  return a + (b - a) * share;
}

}  // namespace

DayFiller::DayFiller(DaySink sink, RecordSummary& summary)
    : sink_{std::move(sink)}, summary_{summary} {}

void DayFiller::give(const RecordedDay& day) {
  if (summary_.days == 0) summary_.first = day.day;
  summary_.last = day.day;
  ++summary_.days;
  sink_(day, summary_);
}

void DayFiller::add(const RecordedDay& day) {
  if (last_) {
    assert(day.day > last_->day);
    const int missing = day.day - last_->day - 1;
    if (missing > longest_filled_days) {
      ++summary_.gap_count;
      if (summary_.gaps.size() < gaps_listed) {
        summary_.gaps.push_back({last_->day + 1, day.day - 1});
      }
    }
    for (int i = 1; missing <= longest_filled_days && i <= missing; ++i) {
      const double share = i / (missing + 1.0);
      RecordedDay filled{last_->day + i, {}, {}};
      filled.air = {between(last_->air.tmin_c, day.air.tmin_c, share),
                    between(last_->air.tmax_c, day.air.tmax_c, share), false};
      if (last_->hours && day.hours) {
        filled.hours.emplace();
        for (std::size_t h = 0; h < 24; ++h) {
          (*filled.hours)[h] = between((*last_->hours)[h], (*day.hours)[h], share);
        }
      }
      ++summary_.filled_days;
      give(filled);
    }
  }
  last_ = day;
  give(day);
}

HourFiller::HourFiller(DayFiller& days, RecordSummary& summary) : days_{days}, summary_{summary} {}

void HourFiller::add(long hour, double t_c) {
  if (open_count_ > 0 && hour != open_hour_) close_hour();
  open_hour_ = hour;
  open_sum_ += t_c;
  ++open_count_;
}

void HourFiller::close_hour() {
  const double t_c = open_count_ == 1 ? open_sum_ : open_sum_ / open_count_;
  if (last_hour_) {
    const long missing = open_hour_ - *last_hour_ - 1;
    for (long i = 1; missing <= longest_filled_hours && i <= missing; ++i) {
      const double share = static_cast<double>(i) / static_cast<double>(missing + 1);
      place(*last_hour_ + i, between(last_c_, t_c, share));
      ++summary_.filled_hours;
    }
  }
  place(open_hour_, t_c);
  last_hour_ = open_hour_;
  last_c_ = t_c;
  open_sum_ = 0.0;
  open_count_ = 0;
}

void HourFiller::place(long hour, double t_c) {
  const int serial = static_cast<int>(hour >= 0 ? hour / 24 : (hour - 23) / 24);
  if (serial_ && serial != *serial_) close_day(false);
  serial_ = serial;
  const auto i = static_cast<std::size_t>(hour - 24L * serial);
  day_[i] = t_c;
  has_[i] = true;
}

/// Hands the day on if it is whole; the first and the last may lack a few hours at the outer end.
void HourFiller::close_day(bool at_end) {
  const auto given = std::find(has_.begin(), has_.end(), true);
  const auto lead = given - has_.begin();
  if (first_day_ && lead <= longest_filled_hours) {
    std::fill_n(day_.begin(), lead, day_[static_cast<std::size_t>(lead)]);
    std::fill_n(has_.begin(), lead, true);
    summary_.filled_hours += lead;
  }
  if (at_end) {
    const auto tail = std::find(has_.rbegin(), has_.rend(), true) - has_.rbegin();
    if (tail <= longest_filled_hours) {
      std::fill(day_.end() - tail, day_.end(), day_[static_cast<std::size_t>(23 - tail)]);
      std::fill(has_.end() - tail, has_.end(), true);
      summary_.filled_hours += tail;
    }
  }
  if (std::all_of(has_.begin(), has_.end(), [](bool has) { return has; })) {
    const auto [low, high] = std::minmax_element(day_.begin(), day_.end());
    days_.add({Day{} + *serial_, {*low, *high, true}, day_});
  }
  first_day_ = false;
  has_.fill(false);
}

void HourFiller::finish() {
  if (open_count_ > 0) close_hour();
  if (serial_) close_day(true);
}

}  // namespace bulbwright
