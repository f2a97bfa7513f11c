#include "base/notice_words.hpp"

#include <cmath>

#include <fmt/core.h>

namespace bulbwright {

std::string both_rulers(Millimetres length) {
  const double eighths = std::round(length.value() / millimetres_per_inch * 8.0);
  const int whole = static_cast<int>(eighths) / 8;
  int numerator = static_cast<int>(eighths) % 8, denominator = 8;
  while (numerator > 0 && numerator % 2 == 0) {
    numerator /= 2;
    denominator /= 2;
  }
  const std::string fraction = numerator == 0 ? "" : fmt::format(" {}/{}", numerator, denominator);
  return fmt::format("{:g} mm ({}{} in)", std::ceil(rounded(length.value(), 0.1)), whole, fraction);
}

std::string both_scales(Celsius temperature) {
  const double celsius = rounded(temperature.value(), 0.5);
  return fmt::format("{:g} degrees C ({:g} F)", celsius, rounded(celsius * 1.8 + 32.0, 1.0));
}

std::string weeks_text(double weeks) {
  const double shown = rounded(weeks, 0.5);
  return fmt::format("{:g} week{}", shown, shown == 1.0 ? "" : "s");
}

std::string days_text(int days) {
  return fmt::format("{} day{}", days, days == 1 ? "" : "s");
}

std::string listed(const std::vector<std::string>& words, const char* last) {
  std::string text;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) text += i + 1 == words.size() ? fmt::format(" {} ", last) : ", ";
    text += words[i];
  }
  return text;
}

}  // namespace bulbwright
