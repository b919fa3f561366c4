// Runs the kernel's hidden-line removal and collects the lines that are seen.
#include "kernel/viewer.h"

#include <BRepMesh_IncrementalMesh.hxx>
#include <HLRAlgo_EdgeStatus.hxx>
#include <HLRAlgo_Projector.hxx>
#include <HLRBRep_PolyAlgo.hxx>
#include <TopExp.hxx>
#include <TopTools_IndexedMapOfShape.hxx>
#include <set>
#include <stdexcept>

#include "kernel/guard.h"
#include "kernel/shapes.h"
#include "kernel/wires.h"

namespace bedwright {

namespace {

constexpr Mm crumb = 0.05;
// Chords of a circle turn by at most this, however small the circle.
constexpr Radians chord_turn = 30 * degree;

HLRAlgo_Projector projector(const ViewDirection& direction) {
  const Vec3 right = cross(direction.up, direction.toward_eye);
  if (!(norm(right) > 1e-9 * norm(direction.up) * norm(direction.toward_eye))) {
    throw std::invalid_argument("a view's up must not lie along its line of sight");
  }
  return {gp_Ax2(gp_Pnt(), gp_Dir(vector(direction.toward_eye)), gp_Dir(vector(right)))};
}

// Visible stretches of one edge run from `from` to `to`, as parameters in order;
// what lies between them is hidden.
void add_run(HLRAlgo_EdgeStatus& status, Vec2 from, Vec2 to, ViewEdge edge, bool standing, View& visible,
             View& hidden) {
  const auto add = [&](View& view, double start, double end) {
    // Shorter than any pen is wide: crumbs of rounding where edges cross.
    if ((end - start) * norm(to - from) < crumb) return;
    view.push_back(
        {{from + start * (to - from), from + end * (to - from)}, &view == &visible, edge, standing});
  };
  double done = 0;
  if (!status.AllHidden()) {
    for (int i = 1; i <= status.NbVisiblePart(); ++i) {
      double start = 0, end = 0;
      Standard_ShortReal start_slack = 0, end_slack = 0;
      status.VisiblePart(i, start, start_slack, end, end_slack);
      add(hidden, done, start);
      add(visible, start, end);
      done = end;
    }
  }
  add(hidden, done, 1);
}

// `standing`: the edges and faces of the parts that stand.
void collect(HLRBRep_PolyAlgo& algo, const TopTools_IndexedMapOfShape& standing, View& visible,
             View& hidden) {
  for (algo.InitHide(); algo.MoreHide(); algo.NextHide()) {
    HLRAlgo_EdgeStatus status;
    TopoDS_Shape shape;
    bool smooth = false, very_smooth = false, outline = false, inner = false;
    const auto& run = algo.Hide(status, shape, smooth, very_smooth, outline, inner);
    const ViewEdge edge = outline || inner        ? ViewEdge::outline
                          : smooth || very_smooth ? ViewEdge::smooth
                                                  : ViewEdge::sharp;
    const gp_XY from = run.PntP12D(), to = run.PntP22D();
    add_run(status, {from.X(), from.Y()}, {to.X(), to.Y()}, edge, standing.Contains(shape), visible, hidden);
  }
}

bool drawn(const Bed& bed, const Item& item) {
  return item.shown && !std::holds_alternative<Hardware>(bed.parts[item.part].form);
}

}  // namespace

struct Viewer::Inside {
  explicit Inside(const Bed& bed, Mm chord_error) : shapes(bed, Detail::picture), deviation(chord_error) {}

  // Chords are made once for each part; its copies share them.
  TopoDS_Shape meshed(int index) {
    const int part = shapes.bed().items[index].part;
    if (ready.insert(part).second) BRepMesh_IncrementalMesh(shapes.part(part), deviation, false, chord_turn);
    return shapes.item(index);
  }

  Shapes shapes;
  Mm deviation;
  std::set<int> ready;  // parts that have chords
};

Viewer::Viewer(const Bed& bed, Mm deviation) : inside_(std::make_unique<Inside>(bed, deviation)) {}
Viewer::~Viewer() = default;
Viewer::Viewer(Viewer&&) noexcept = default;
Viewer& Viewer::operator=(Viewer&&) noexcept = default;

View Viewer::view(const ViewDirection& direction, bool with_hidden) {
  return guarded("view", [&] {
    const Bed& bed = inside_->shapes.bed();
    const HLRAlgo_Projector projection = projector(direction);
    const Handle(HLRBRep_PolyAlgo) algo = new HLRBRep_PolyAlgo;
    TopTools_IndexedMapOfShape standing;
    for (std::size_t i = 0; i < bed.items.size(); ++i) {
      if (!drawn(bed, bed.items[i])) continue;
      const TopoDS_Shape shape = inside_->meshed(static_cast<int>(i));
      algo->Load(shape);
      if (bed.parts[bed.items[i].part].origin != Origin::standing) continue;
      TopExp::MapShapes(shape, TopAbs_FACE, standing);
      TopExp::MapShapes(shape, TopAbs_EDGE, standing);
    }
    View visible, hidden;
    if (algo->NbShapes() == 0) return visible;
    algo->Projector(projection);
    algo->Update();
    collect(*algo, standing, visible, hidden);
    if (with_hidden) visible.insert(visible.end(), hidden.begin(), hidden.end());
    return visible;
  });
}

BedViews bed_views(const Bed& bed) {
  Viewer viewer(bed);
  BedViews views;
  views.plan = viewer.view(plan_direction);
  views.side = viewer.view(side_direction);
  views.rear = viewer.view(rear_direction);
  views.isometric = viewer.view(isometric_view);
  return views;
}

}  // namespace bedwright
