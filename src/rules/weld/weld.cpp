// Fillet sizes and strengths, and the load each tab's weld carries.
#include "rules/weld/weld.h"

#include <fmt/format.h>

#include <cmath>
#include <numbers>

namespace bedwright {
namespace {

// Log on the bunks when the order names none: invented, of the size of an oak 20 in
// by 12 ft; from memory.
constexpr Kg usual_log = 1500 * pound;
// Head and log stand on four bearings at least, two on each side. Common practice, no
// published source.
constexpr double bearings = 4;

std::optional<Kg> named_log(const Job& job) {
  const auto& log = job.order.work.log;
  const Species* species = log ? job.catalog.species_named(log->species.text) : nullptr;
  if (!species) return std::nullopt;
  return std::numbers::pi / 4 * log->diameter * log->diameter * log->length * 1e-9 *
         species->heaviest_kg_per_m3();
}

}  // namespace

Mm least_fillet(Mm thinner) {
  if (thinner <= inch / 4 + same_place) return inch / 8;
  if (thinner <= inch / 2 + same_place) return 3 * inch / 16;
  if (thinner <= 3 * inch / 4 + same_place) return inch / 4;
  return 5 * inch / 16;
}

Mm largest_fillet(Mm edge) { return edge < inch / 4 - same_place ? edge : edge - inch / 16; }

double fillet_allowable(Mm leg, Mpa electrode) { return 0.60 * electrode / 2.0 * leg * std::sqrt(0.5); }

double steel_allowable(Mm thinner) { return 0.60 * least_tensile / 2.0 * thinner; }

double line_allowable(const Weld& weld) {
  return weld.thinner > 0 ? std::min(fillet_allowable(weld.leg), steel_allowable(weld.thinner))
                          : fillet_allowable(weld.leg);
}

std::optional<TabLoad> tab_load(const Scene& scene) {
  if (scene.limits.tab_load > 0) return TabLoad{scene.limits.tab_load * gravity, "limits.tab_load"};
  if (!scene.input.job) return std::nullopt;
  const auto named = named_log(*scene.input.job);
  const Kg log = named.value_or(usual_log), both = scene.input.job->kit.head.mass + log;
  return TabLoad{scene.input.job->order.work.landing * both / bearings * gravity,
                 fmt::format("a quarter of the head and {} of {}, {:g} times as it lands",
                             named ? "the log" : "a usual log, none being named,",
                             scene.figures.in_one_unit().mass(log), scene.input.job->order.work.landing)};
}

std::optional<Mm> largest_log(const Scene& scene, Newton load) {
  if (scene.limits.tab_load > 0 || !scene.input.job) return std::nullopt;
  const auto named = named_log(*scene.input.job);
  const Kg most =
      load / gravity * bearings / scene.input.job->order.work.landing - scene.input.job->kit.head.mass;
  if (!named || most <= 0) return std::nullopt;
  const Mm step = scene.figures.coarse_step();
  const Mm diameter =
      std::floor(scene.input.job->order.work.log->diameter * std::sqrt(most / *named) / step + 1e-9) * step;
  return diameter > 0 ? std::optional<Mm>(diameter) : std::nullopt;
}

}  // namespace bedwright
