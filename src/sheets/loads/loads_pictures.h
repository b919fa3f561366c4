// The pictures on the loads page, one under the other on one scale along the bed.
#pragma once

#include "draw/labels.h"
#include "loads/loads.h"
#include "loads/travel_name.h"

namespace bedwright {

struct PicturePens {
  int thin = 0, thick = 0, centre = 0, dashed = 0;
};

// Places along the bed to the page: both ways to one scale.
struct AlongBed {
  Mm left = 0;  // on paper, of x = from
  Mm from = 0;
  double reduction = 1;
  Mm operator()(Mm x) const { return left + (x - from) / reduction; }
  Mm size(Mm length) const { return length / reduction; }
};

struct Picture {
  const Job& job;
  const Bed& bed;
  const LoadsResult& loads;
  Labels& labels;
  PicturePens pens;
  AlongBed along;
  Figures say;
  Box2 space;  // of this picture, its title in the upper left corner
};

void draw_on_road(const Picture& p);
void draw_at_work(const Picture& p);
void draw_sag(const Picture& p);
void draw_moment(const Picture& p);

}  // namespace bedwright
