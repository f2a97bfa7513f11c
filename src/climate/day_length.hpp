#pragma once

namespace bulbwright {

/// Depression of the sun's centre below the horizon, in degrees, that ends the day.
inline constexpr double sunrise_depression = 0.8333;  ///< upper limb with refraction: almanacs

/// Declination of the sun in radians on a day of the year (1 = 1 January).
/// Source: Spencer, "Fourier series representation of the position of the sun", Search 2, 1971,
/// 172.
double solar_declination(int day_of_year);

/// Hours a day with the sun's centre above -depression degrees: (24/pi) acos((-sin p - sin phi sin
/// delta) / (cos phi cos delta)); 0 and 24 beyond the polar circles. Latitude in degrees.
double hours_above(double latitude, double declination, double depression);

/// Day length in hours, sunrise to sunset as almanacs print them, within 0.1 h to 60 degrees of
/// latitude (Spencer's series knows no leap years).
double day_length_hours(double latitude, int day_of_year);

}  // namespace bulbwright
