// Measures two items with the kernel, solid by solid.
#include "kernel/exact_distance.h"

#include <BRepAlgoAPI_Common.hxx>
#include <BRepExtrema_DistShapeShape.hxx>
#include <BRepGProp.hxx>
#include <GProp_GProps.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_ListOfShape.hxx>
#include <TopoDS.hxx>
#include <map>
#include <stdexcept>
#include <vector>

#include "bed/names.h"
#include "kernel/build.h"
#include "kernel/guard.h"
#include "kernel/shapes.h"

namespace bedwright {

namespace {

std::vector<TopoDS_Shape> solids_of(const TopoDS_Shape& shape) {
  std::vector<TopoDS_Shape> solids;
  for (TopExp_Explorer it(shape, TopAbs_SOLID); it.More(); it.Next()) solids.push_back(it.Current());
  return solids;
}

Mm3 common_volume(const TopoDS_Shape& a, const TopoDS_Shape& b) {
  TopTools_ListOfShape one, other;
  one.Append(a);
  other.Append(b);
  BRepAlgoAPI_Common common;
  common.SetArguments(one);
  common.SetTools(other);
  common.SetFuzzyValue(touching_fuzz);
  common.Build();
  if (common.HasErrors()) throw std::runtime_error("the kernel could not intersect two solids");
  Mm3 total = 0;
  for (const TopoDS_Shape& solid : solids_of(common.Shape())) {
    GProp_GProps properties;
    BRepGProp::VolumeProperties(solid, properties);
    total += properties.Mass();
  }
  return total;
}

Closeness measure_solids(const TopoDS_Shape& a, const TopoDS_Shape& b) {
  BRepExtrema_DistShapeShape distance(a, b);
  if (!distance.IsDone()) throw std::runtime_error("the kernel could not measure a distance");
  if (!distance.InnerSolution() && distance.Value() > touching_fuzz) return {distance.Value(), 0};
  return {0, common_volume(a, b)};
}

}  // namespace

struct ExactPairs::Inside {
  explicit Inside(const Bed& bed) : shapes(bed) {}

  std::vector<TopoDS_Shape> solids(int index, Extent extent) {
    const Bed& bed = shapes.bed();
    const Item& item = bed.items.at(index);
    const auto* hardware = std::get_if<Hardware>(&bed.parts[item.part].form);
    if (extent == Extent::whole || hardware == nullptr || hardware->kind != HardwareKind::bolt) {
      return solids_of(shapes.item(index));
    }
    TopoDS_Shape& head = heads[item.part];
    if (head.IsNull()) head = build_bolt_head(*hardware);
    return {head.Located(location(item.placement))};
  }

  // Calls use(solid of a, solid of b); what the kernel throws names the two items.
  template <class Use>
  void for_each(int a, int b, Extent extent, Use use) {
    const Bed& bed = shapes.bed();
    guarded(name(bed.items.at(a)) + " against " + name(bed.items.at(b)), [&] {
      for (const TopoDS_Shape& one : solids(a, extent))
        for (const TopoDS_Shape& other : solids(b, extent)) use(one, other);
    });
  }

  Shapes shapes;
  std::map<int, TopoDS_Shape> heads;  // by part
};

ExactPairs::ExactPairs(const Bed& bed) : inside_(std::make_unique<Inside>(bed)) {}
ExactPairs::~ExactPairs() = default;
ExactPairs::ExactPairs(ExactPairs&&) noexcept = default;
ExactPairs& ExactPairs::operator=(ExactPairs&&) noexcept = default;

Closeness ExactPairs::measure(int a, int b, Extent extent) {
  Closeness closest{std::numeric_limits<double>::infinity(), 0};
  inside_->for_each(a, b, extent, [&](const TopoDS_Shape& one, const TopoDS_Shape& other) {
    const Closeness pair = measure_solids(one, other);
    closest.gap = std::min(closest.gap, pair.gap);
    closest.common_volume += pair.common_volume;
  });
  return closest;
}

Mm3 ExactPairs::shared(int a, int b, Extent extent) {
  Mm3 sum = 0;
  inside_->for_each(a, b, extent, [&](const TopoDS_Shape& one, const TopoDS_Shape& other) {
    sum += common_volume(one, other);
  });
  return sum;
}

}  // namespace bedwright
