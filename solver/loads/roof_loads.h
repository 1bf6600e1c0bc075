#pragma once

/// What may lie on a roof, by its pitch in degrees, 0 to 90. Loads in N/mm2 on plan.
namespace deadshore::solver {

/// Imposed load of people who mend a roof that is walked on for nothing else (category H), N/mm2 on
/// plan: 0.6 kN/m2 below 30 degrees, falling linearly to 0 at 60. UK NA to EN 1991-1-1 Table NA.7,
/// from memory, unverified.
/// \param pitch degrees
[[nodiscard]] double roof_access_load(double pitch);

/// Snow load shape coefficient mu_1 of a plain slope from which snow may slide freely, as a part of
/// the snow on the ground: 0.8 to 30 degrees, falling linearly to 0 at 60. EN 1991-1-3 Table 5.2,
/// from memory, unverified. Drifts in valleys, behind parapets and against higher walls bring more,
/// and snow guards hold back what would slide: neither is in it.
/// \param pitch degrees
[[nodiscard]] double snow_shape_coefficient(double pitch);

/// Characteristic snow load on the ground in the United Kingdom, N/mm2:
/// s_k = 0.15 + (0.1 zone + 0.05) + (altitude - 100 m) / 525 m in kN/m2, never below 0. UK NA to EN
/// 1991-1-3 NA.2.8, from memory, unverified.
/// \param zone of the map, 1 to 5
/// \param altitude mm above the sea
[[nodiscard]] double ground_snow_uk(double zone, double altitude);

}  // namespace deadshore::solver
