// The bare kernel's own time for the same work, to stand beside ours: what is
// left when shapes are ready or made by direct calls, with no Bed behind them.
#pragma once

#include <TopoDS_Compound.hxx>
#include <TopoDS_Shape.hxx>
#include <gp_Ax2.hxx>
#include <string>
#include <vector>

#include "bed/bed.h"

namespace bedwright::floor {

// The shown items' shapes, placed; `hardware` with or without bolts and nuts.
std::vector<TopoDS_Shape> ready_shapes(const Bed& bed, bool picture);

TopoDS_Compound together(const std::vector<TopoDS_Shape>& shapes);

// Transfer and write as the kernel does it by itself: one solid for each part, no names
// of ours, no colours, no fixed header. Returns the count of bytes.
std::size_t bare_step(const TopoDS_Compound& whole);

// Hidden lines found and counted, nothing read out.
int bare_view(const std::vector<TopoDS_Shape>& shapes, const gp_Ax2& eye);

}  // namespace bedwright::floor
