// The library in thirty lines: what stops an order, and what its rails sag.
//   example params/orders/base.yaml [KEY=VALUE ...]
#include <fmt/format.h>

#include "examine/examine.h"

using namespace bedwright;

int main(int argc, char** argv) {
  if (argc < 2) return 2;
  FileStore files;
  const Examination examination = examine(files, argv[1], {argv + 2, argv + argc});
  if (!examination) {
    for (const Problem& p : examination.problems) fmt::print(stderr, "{}\n", to_line(p));
    return 2;
  }
  const Examined& bed = *examination.bed;
  for (const Finding& f : bed.findings)
    if (f.severity == Severity::stop) fmt::print("{} {}: {}\n", f.code, f.subjects.front().name, f.message);

  // One thing of the bed by what it is, not by what it is called.
  const int tab = bed.bed.item({Kind::tab, Side::right, 1});
  const Vec3 hole = hole_in_world(bed.bed, ply_through(bed.bed, tab, 0)).centre;
  fmt::print("{}: hole {:.1f} mm behind the front end, {:.1f} mm from the centre line\n",
             name(bed.bed.items[tab]), hole.x, hole.y);
  fmt::print("rails sag {:.2f} mm at most, {:.2f} mm allowed\n", bed.loads.stand.sag,
             bed.loads.stand.sag_limit);
  return bed.is_stopped() ? 1 : 0;
}
