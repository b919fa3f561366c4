// Rows of the planted-fault matrix whose limit is set from hand statics, not from the figure
// itself: the base demo, its weights and places as tests/loads/by_hand.h works them, with steel,
// rating or factor a twentieth short of what that asks, or a twentieth more. A stress or a load
// that is half or twice what it should be misses the fault or calls the twin one.
#include "loads/by_hand.h"
#include "planted/matrix.h"

namespace bedwright {
namespace {

using namespace testing;

constexpr double hand = 0.05;  // hand weights leave out holes, paint and weld

Job base() {
  return demo_job("base", {"axle.position=137 in", "kit.head.lock_offset=104 in", "kit.head.mass=610 lb",
                           "kit.head.mass_y=3 in", "jacks=[17 in, 120 in, 223 in]"});
}
Findings with_base(const std::function<void(Job&)>& change) {
  return run_demo("base", [&](Job& job) {
    job = base();
    change(job);
  });
}
double tongue() {
  return tongue_of(both({frame_of_base(), track_of_base(), axles_at({137}), head_at_lock(610)}), 137);
}
// Steel that just stands so many psi with the usual factor of 1.67.
void set_yield(Job& job, double psi, double past) {
  job.frame.yield_strength = 1.67 * psi * 0.001 * ksi * (1 - hand * past);
}

double mains_on_the_road() {
  const Lumps on = both({frame_of_base(), track_of_base(), head_at_lock(610)});
  const double side = 0.5 + (610 * 3 + aside_of_track) / weight(on) / 44;
  return 2.0 * side * bent_by_hand(on, 261, {124, 150}, 137) / s_c6x82;
}

// The head alone on two pairs of jacks, on one wheel each side, at its worst place.
double mains_at_work() {
  const Lumps half = times(both({frame_of_base({17, 223}), track_of_base(), axles_at({137})}), 0.5);
  double most = 0;
  for (double x = 100; x <= 140; x += 2) {
    const TwoSupports main(17, 223, both({half, {{x, x, 610 * (0.5 + 3.0 / 44)}}}));
    most = std::max(most, main.most_bending(0, 240));
  }
  return most / s_c6x82;
}

// On two tabs a section: a plate of 1/2 in, 3 in long, 1-1/4 in from the web's back to its hole.
double tab_on_the_road() {
  const TabOverABump bump;
  return (bump.down * 1.25 + bump.turning) / (3 * 0.25 / 6);
}

// What holds the bed over what a log pushes with its whole weight: feet 23-3/4 in out, the push
// 37-7/8 in above the road, a log of 2199 lb 5 in to the left.
double push_by_hand() {
  const double bed = weight(both({frame_of_base(), track_of_base(), axles_at({137})})) + 610,
               log = heaviest_of_its_kind * 2199.1;
  return (bed * 23.75 + 610 * 3 + aside_of_track + log * (23.75 - 5)) / (log * 37.875);
}

}  // namespace

std::vector<Planted> load_rows_by_hand() {
  return {
      {"TONGUE-JACK", "tongue jack rated for the tongue, uncoupled",
       [](double past) {
         // 24 in ahead of the mains, the ball 41 in.
         return with_base([&](Job& j) {
           j.frame.tongue_jack.rating = tongue() * (137 + 41) / (137 + 24) * (1 - hand * past) * pound;
         });
       }},
      {"TOW-BEND", "mains of steel that just stands the road",
       [](double past) { return with_base([&](Job& j) { set_yield(j, mains_on_the_road(), past); }); }},
      {"TONGUE-BEND", "tongue of steel that just stands the road",
       [](double past) {
         return with_base([&](Job& j) { set_yield(j, 2 * tongue() * 41 / (2 * s_c5x67), past); });
       }},
      {"TONGUE-WELD", "bump that loads the tongue's welds to what they may carry",
       [](double past) {
         return with_base([&](Job& j) {
           j.order.road.bump = 21000 / (TongueWelds().stress(tongue()) / 2) * (1 + hand * past);
         });
       }},
      {"TAB-ROAD", "tabs of steel that just stands the road",
       [](double past) {
         return with_base([&](Job& j) {
           j.kit.mounting.max_pitch = 70 * inch;
           set_yield(j, tab_on_the_road(), past);
         });
       }},
      {"STAND-BEND", "mains of steel that just stands the head between two pairs of jacks",
       [](double past) {
         return with_base([&](Job& j) {
           j.order.jacks = {17 * inch, 223 * inch};
           j.order.work.log.reset();
           j.kit.head.wheel_base = 0;
           set_yield(j, mains_at_work(), past);
         });
       }},
      {"STAND-PUSH", "push that leaves 1.5 times what tips it",
       [](double past) {
         return with_base([&](Job& j) {
           j.order.work.log.value().diameter = 20 * inch;
           j.order.work.log->length = 192 * inch;
           j.order.work.push = push_by_hand() / 1.5 * (1 + hand * past);
         });
       }},
  };
}

}  // namespace bedwright
