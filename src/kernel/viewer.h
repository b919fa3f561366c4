// The bed drawn with hidden lines taken out.
#pragma once

#include <memory>

#include "bed/bed.h"
#include "draw/view.h"

namespace bedwright {

// Makes views of the shown items, bolt hardware left out, members drawn with
// sharp corners and holes not drawn: at the scale of a whole bed they are specks.
// Shapes are kept from one view to the next.
class Viewer {
 public:
  // Reads `bed` for as long as it lives. Arcs are given as chords that stray at
  // most about `deviation` from them.
  explicit Viewer(const Bed& bed, Mm deviation = 0.5);
  ~Viewer();
  Viewer(Viewer&&) noexcept;
  Viewer& operator=(Viewer&&) noexcept;

  // Visible lines come first; hidden ones only `with_hidden`. The same bed makes
  // the same lines in the same order. Throws std::invalid_argument for a
  // direction that is none, std::runtime_error when a part cannot be made or
  // projected.
  View view(const ViewDirection& direction, bool with_hidden = false);

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

// The views of the general arrangement, by one projector: the parts' shapes and
// meshes are made once. Throws what Viewer throws.
BedViews bed_views(const Bed& bed);

}  // namespace bedwright
