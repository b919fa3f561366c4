// The words of each unit, and which figures may go with them.
#include "units/parse.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <span>

#include "units/likely.h"
#include "units/scan.h"

namespace bedwright {
namespace {

enum class System { imperial, metric, neither };

struct Unit {
  std::string_view word;
  double size;  // in the program's own unit
  System system;
};

constexpr std::array length_units{
    Unit{"ft", foot, System::imperial}, Unit{"'", foot, System::imperial}, Unit{"in", inch, System::imperial},
    Unit{"\"", inch, System::imperial}, Unit{"mm", 1, System::metric},     Unit{"cm", 10, System::metric},
    Unit{"m", 1000, System::metric},
};
constexpr std::array mass_units{
    Unit{"lb", pound, System::imperial},
    Unit{"oz", pound / 16, System::imperial},
    Unit{"kg", 1, System::metric},
    Unit{"g", 0.001, System::metric},
};
constexpr std::array stress_units{
    Unit{"ksi", ksi, System::imperial},
    Unit{"psi", ksi / 1000, System::imperial},
    Unit{"MPa", 1, System::metric},
};
constexpr std::array angle_units{
    Unit{"deg", degree, System::neither},
    Unit{"\u00b0", degree, System::neither},
    Unit{"rad", 1, System::neither},
};

// A unit as people also write it, and the word that is taken for it.
struct OtherWord {
  std::string_view written, taken;
};

constexpr std::array other_words{
    OtherWord{"inch", "in"},        OtherWord{"inches", "in"},      OtherWord{"ins", "in"},
    OtherWord{"foot", "ft"},        OtherWord{"feet", "ft"},        OtherWord{"millimeter", "mm"},
    OtherWord{"millimeters", "mm"}, OtherWord{"millimetre", "mm"},  OtherWord{"millimetres", "mm"},
    OtherWord{"centimeter", "cm"},  OtherWord{"centimeters", "cm"}, OtherWord{"centimetre", "cm"},
    OtherWord{"centimetres", "cm"}, OtherWord{"meter", "m"},        OtherWord{"meters", "m"},
    OtherWord{"metre", "m"},        OtherWord{"metres", "m"},       OtherWord{"lbs", "lb"},
    OtherWord{"pound", "lb"},       OtherWord{"pounds", "lb"},      OtherWord{"ounce", "oz"},
    OtherWord{"ounces", "oz"},      OtherWord{"kgs", "kg"},         OtherWord{"kilo", "kg"},
    OtherWord{"kilos", "kg"},       OtherWord{"kilogram", "kg"},    OtherWord{"kilograms", "kg"},
    OtherWord{"gram", "g"},         OtherWord{"grams", "g"},        OtherWord{"degree", "deg"},
    OtherWord{"degrees", "deg"},    OtherWord{"radian", "rad"},     OtherWord{"radians", "rad"},
};

struct Vocabulary {
  std::span<const Unit> units;
  std::string_view plural, units_told, examples;
};

Vocabulary vocabulary(Dimension dimension) {
  switch (dimension) {
    case Dimension::length:
      return {length_units, "lengths", "ft, in, mm, cm or m", "80 in, 6 ft 8 in or 2032 mm"};
    case Dimension::mass:
      return {mass_units, "masses", "lb, oz, kg or g", "850 lb or 386 kg"};
    case Dimension::stress:
      return {stress_units, "stresses", "ksi, psi or MPa", "36 ksi or 250 MPa"};
    case Dimension::angle:
      break;
  }
  return {angle_units, "angles", "deg or rad", "25 deg or 0.4 rad"};
}

ParsedQuantity fail(std::string what, std::string would_do) {
  return {std::nullopt, std::move(what), std::move(would_do)};
}

const Unit* find_unit(const Vocabulary& words, std::string_view word) {
  const auto found = std::find_if(words.units.begin(), words.units.end(),
                                  [&](const Unit& unit) { return unit.word == word; });
  return found == words.units.end() ? nullptr : &*found;
}

bool same_word(std::string_view a, std::string_view b) {
  const auto folded = [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; };
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [&](char x, char y) { return folded(x) == folded(y); });
}

// The unit of this vocabulary that is meant by another word for it, or by it in
// other capitals; empty when there is none.
std::string_view meant(const Vocabulary& words, std::string_view word) {
  for (const OtherWord& other : other_words)
    if (same_word(word, other.written) && find_unit(words, other.taken)) return other.taken;
  for (const Unit& unit : words.units)
    if (same_word(word, unit.word)) return unit.word;
  return {};
}

// Two terms are only ever whole feet and then inches under twelve.
ParsedQuantity check_pair(const QuantityTerm& a, const Unit& ua, const QuantityTerm& b, const Unit& ub,
                          const Vocabulary& words) {
  const auto such_as = fmt::format("write it as {}", words.examples);
  if (ua.system != ub.system) {
    return fail(fmt::format("mixes {} and {}", a.unit, b.unit), "keep to one system: " + such_as);
  }
  if (ua.size == ub.size) return fail(fmt::format("gives {} twice", a.unit), such_as);
  if (ua.system != System::imperial || words.plural != "lengths") {
    return fail(fmt::format("has both {} and {}", a.unit, b.unit), "use one unit: " + such_as);
  }
  if (ua.size < ub.size) return fail("has inches before feet", "put the feet first: " + such_as);
  if (!a.whole) {
    return fail(fmt::format("has inches behind {} feet", a.text), "use whole feet when inches follow");
  }
  // Twelve or more behind feet is a slip of the hand, such as 6 ft 65 in for 6 ft 6.5 in.
  if (b.figure >= 12) {
    return fail(fmt::format("has {} inches behind feet", b.text), "keep the inches behind feet under 12");
  }
  return {a.figure * ua.size + b.figure * ub.size, {}, {}};
}

ParsedQuantity check_unit(const QuantityTerm& term, const Vocabulary& words, bool first) {
  if (term.unit.empty()) {
    return fail(first ? "has no unit" : fmt::format("has no unit behind {}", term.text),
                fmt::format("add a unit: write it as {}", words.examples));
  }
  const Unit* unit = find_unit(words, term.unit);
  if (!unit) {
    const std::string_view taken = meant(words, term.unit);
    const std::string such_as = fmt::format("{} are written as {}", words.plural, words.examples);
    return fail(fmt::format("has the unit \"{}\", which is none of {}", term.unit, words.units_told),
                taken.empty() ? such_as : fmt::format("write {} for {}: {}", taken, term.unit, such_as));
  }
  if (term.fraction && unit->system != System::imperial) {
    return fail(fmt::format("has a fraction of {}", term.unit),
                fmt::format("write {} as a decimal", term.unit));
  }
  return {0.0, {}, {}};
}

std::string patterns_for(Dimension dimension) {
  const std::string decimal = "([0-9]{1,9}(\\.[0-9]{1,12})?|\\.[0-9]{1,12})";
  const std::string ratio = "[0-9]{1,4}/(?!0+([^0-9]|$))[0-9]{1,4}";
  const std::string imperial = "(" + decimal + "|([0-9]{1,9}(-|[ \\t]+))?" + ratio + ")";
  const std::string gap = "[ \\t]*", open = "^" + gap + "-?(", close = ")" + gap + "$";
  const std::string under_twelve = "(0{0,8}[0-9]|0{0,7}1[01])";
  const std::string inches = "(" + under_twelve + "(\\.[0-9]{1,12})?|\\.[0-9]{1,12}|(" + under_twelve +
                             "(-|[ \\t]+))?" + ratio + ")" + gap + "(in|\")";
  switch (dimension) {
    case Dimension::length:
      return open + imperial + gap + "(ft|in|'|\")|[0-9]{1,9}" + gap + "(ft" + gap + "|'" + gap + "(-" + gap +
             ")?)" + inches + "|" + decimal + gap + "(mm|cm|m)" + close;
    case Dimension::mass:
      return open + imperial + gap + "(lb|oz)|" + decimal + gap + "(kg|g)" + close;
    case Dimension::stress:
      return open + imperial + gap + "(ksi|psi)|" + decimal + gap + "MPa" + close;
    case Dimension::angle:
      break;
  }
  return open + decimal + gap + "(deg|\u00b0|rad)" + close;
}

ParsedQuantity as_written(Dimension dimension, std::string_view text) {
  const Vocabulary words = vocabulary(dimension);
  const ScannedQuantity scanned = scan_quantity(text);
  if (!scanned.what.empty()) {
    return fail(scanned.what, fmt::format("{}, as {}", scanned.would_do, words.examples));
  }
  for (const QuantityTerm& term : scanned.terms) {
    ParsedQuantity checked = check_unit(term, words, &term == &scanned.terms.front());
    if (!checked.value) return checked;
  }
  const auto& terms = scanned.terms;
  if (terms.size() > 2) {
    return fail("has more than two figures", fmt::format("write it as {}", words.examples));
  }
  const Unit& unit = *find_unit(words, terms[0].unit);
  ParsedQuantity result{terms[0].figure * unit.size, {}, {}};
  if (terms.size() == 2) {
    result = check_pair(terms[0], unit, terms[1], *find_unit(words, terms[1].unit), words);
  }
  if (result.value && scanned.negative) *result.value = 0.0 - *result.value;  // never a minus zero
  return result;
}

}  // namespace

ParsedQuantity parse_quantity(Dimension dimension, std::string_view text) {
  ParsedQuantity parsed = as_written(dimension, text);
  if (parsed.value) return parsed;
  const std::string plain = in_plain_signs(text);
  if (plain != text && as_written(dimension, plain).value)
    parsed.would_do = fmt::format("write {}, if that is what is meant", plain);
  return parsed;
}

const std::string& quantity_pattern(Dimension dimension) {
  static const std::array<std::string, 4> patterns{
      patterns_for(Dimension::length), patterns_for(Dimension::mass), patterns_for(Dimension::stress),
      patterns_for(Dimension::angle)};
  return patterns[static_cast<std::size_t>(dimension)];
}

}  // namespace bedwright
