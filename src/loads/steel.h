// What a section and its steel carry.
#pragma once

#include <algorithm>
#include <optional>
#include <string>

#include "catalog/section.h"
#include "params/job.h"

namespace bedwright {

// Young's modulus of steel, 29 000 ksi: AISC 360, section on material properties.
inline constexpr Mpa steel_modulus = 29000 * ksi;
// Shear modulus, 11 200 ksi: AISC 360, the same section.
inline constexpr Mpa shear_modulus = 11200 * ksi;
// AISC 360 table J3.2, common bolts (ASTM A307), nominal strengths on the gross
// area; the safety factor on both is 2.00.
inline constexpr Mpa bolt_tension = 45 * ksi, bolt_shear = 27 * ksi;
inline constexpr double bolt_safety = 2.0;
// What a bolt may be pulled with beside that shear: AISC 360 section J3.7.
inline Mpa tension_beside(Mpa shear) {
  return std::clamp(1.3 * bolt_tension - bolt_safety * bolt_tension / bolt_shear * shear, 0.0, bolt_tension) /
         bolt_safety;
}
// AISC 360 table J2.5, fillet weld on its throat: 0.60 of the electrode's
// strength (E70: 70 ksi), safety factor 2.00.
inline constexpr Mpa weld_allowable = 0.60 * 70 * ksi / 2.0;
// AISC 360 sections G2.1 and G4: shear, 0.60 of yield on a channel's depth times its web, or on
// the flat height of a tube's two sides.
inline constexpr double web_shear = 0.60;
Mm2 web_area(const Section& section);
inline constexpr double weld_throat = 0.70710678118654752;  // of the leg

// What a fillet may carry, N/mm: its throat, or the thinner steel beside it where that is
// less (AISC 360 section J4.2, shear rupture: 0.60 Fu over 2.00). Fu is the least of the
// grades a frame may be of, 360 MPa (EN 10025 S235; A36 has 58 ksi).
inline double weld_line_allowable(Mm leg, Mm thinner) {
  const double throat = weld_allowable * weld_throat * leg;
  return thinner > 0 ? std::min(throat, 0.60 * 360 / 2.0 * thinner) : throat;
}

struct Bending {
  Mm4 inertia = 0;     // about the axis across the bed
  double modulus = 0;  // mm3, at the farther edge
};

// Of a channel or tube standing upright or an angle lying on its flat leg, bent up and
// down: handbook figures where the section has them, else from its outline.
Bending bending_of(const Section& section);
Mm2 area_of(const Section& section);
// St Venant's torsion constant: of a tube by Bredt's formula, of an open section the sum of length x
// thickness^3 / 3 over its legs (mm4). A handbook's is a little larger, for the fillets.
Mm4 torsion_of(const Section& section);

// What a channel bent about its strong axis may carry, over its elastic modulus: yield, or
// less where the compression flange is held sideways only every `unbraced` (AISC 360 section
// F2, equations F2-2 to F2-6, with an even moment; the plastic moment is not counted on).
Mpa channel_strength(const Section& section, Mm unbraced, Mpa yield);

// Yield strength by a grade's name, of grades a shop buys; nothing for others.
// ASTM A36, A572, A529, A992; EN 10025 S235, S275, S355.
std::optional<Mpa> yield_of_grade(const std::string& grade);

// The frame's: as its file states, else by its grade's name, else 36 ksi (A36,
// the least of them).
Mpa frame_yield(const FrameFile& frame);

// Rails and bunks: a kit's sheet states no grade, so 36 ksi.
inline constexpr Mpa kit_yield = 36 * ksi;

}  // namespace bedwright
