// The smallest margins of hole fit, tips, tab welds and loads.
#include "offer/margins.h"

#include <fmt/format.h>

#include <algorithm>

#include "rules/fit/datum.h"
#include "rules/weld/weld.h"

namespace bedwright {
namespace {

class Smallest {
 public:
  void add(Spare spare) {
    if (!found_ || spare.used > found_->used) found_ = std::move(spare);
  }
  void add(const char* code, const std::string& subject, Mm margin, double used) {
    add({code, subject, margin, "mm", used});
  }
  std::optional<Spare> take() { return std::move(found_); }

 private:
  std::optional<Spare> found_;
};

void hole_fit(const Scene& scene, const Job& job, Smallest& smallest) {
  if (job.order.limits.fit_basis != FitBasis::worst_case) return;
  const DatumMargin tightest = datum_margins(scene, job)[static_cast<std::size_t>(job.order.track.datum)];
  if (tightest.bolt < 0) return;
  const double used = tightest.room > 0 ? 1 - tightest.margin / tightest.room : 1;
  smallest.add("HOLE-FIT", name(scene.bed.bolts[tightest.bolt]), tightest.margin, used);
}

void tips(const Scene& scene, Smallest& smallest) {
  for (std::size_t i = 0; i < scene.bed.bolts.size(); ++i) {
    const Bolt& bolt = scene.bed.bolts[i];
    if (!bolt.in_place || scene.beyond[i].item < 0) continue;
    const Mm clear = tip_clearance(scene.stacks[i], bolt, bolt.length, scene.beyond[i].distance),
             asked = scene.limits.tip_clearance;
    smallest.add("TIP", name(bolt), clear - asked, clear > 0 ? asked / clear : 1);
  }
}

void tab_welds_at_work(const Scene& scene, Smallest& smallest) {
  const auto asked = tab_load(scene);
  if (!asked) return;
  for (const TabWeld& t : tab_welds(scene)) {
    const Weld& w = scene.bed.welds[t.weld];
    const double used = line_load(t, asked->load) / line_allowable(w);
    smallest.add({"WELD-LOAD", name(scene.bed.items[w.a]), 100 * (1 - used), "%", used});
  }
}

// Wider than the road allows is a warning, which stops nothing.
bool can_stop(const LoadMargin& m) { return m.code != "TOW-WIDTH"; }

Spare spare_of(const LoadMargin& m) { return {m.code, name(m), 100 * (1 - m.used), "%", m.used}; }

}  // namespace

std::optional<Spare> load_spare(const std::string& code, const std::vector<LoadMargin>& loads) {
  Smallest smallest;
  for (const LoadMargin& m : loads)
    if (m.code == code) smallest.add(spare_of(m));
  return smallest.take();
}

std::optional<Spare> smallest_spare(const Scene& scene, const Job& job,
                                    const std::vector<LoadMargin>& loads) {
  Smallest smallest;
  hole_fit(scene, job, smallest);
  tips(scene, smallest);
  tab_welds_at_work(scene, smallest);
  for (const LoadMargin& m : loads)
    if (can_stop(m)) smallest.add(spare_of(m));
  return smallest.take();
}

}  // namespace bedwright
