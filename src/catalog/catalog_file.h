// What a catalogue file says, key by key; read_catalog turns it into the
// catalogue's own structs. Areas and second moments are written as plain
// numbers in the handbook's own units, named by their keys.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "catalog/fastener.h"
#include "catalog/section.h"
#include "units/units.h"
#include "yaml/describe.h"
#include "yaml/mark.h"

namespace bedwright {

struct PublishedEntry {
  std::string source;
  Kg weight_per_foot = 0;
  Mm wall = 0;
  double area_in2 = 0, ix_in4 = 0, iy_in4 = 0;
  Kg mass_per_metre = 0;
  double area_cm2 = 0, ix_cm4 = 0, iy_cm4 = 0;
  Mm x_bar = 0, y_bar = 0;
};

struct SectionEntry {
  Name name;
  Shape shape = Shape::angle;
  Mm depth = 0, flange = 0, web = 0, flange_thickness = 0, root_radius = 0, toe_radius = 0;
  double flange_slope = channel_flange_slope;
  Mm thickness_at = 0;
  std::optional<PublishedEntry> published;
};

struct BoltEntry {
  Name name;
  std::string source, lengths_source;
  Mm diameter = 0;
  double threads_per_inch = 0;  // one of these two
  Mm pitch = 0;
  Mm head_flats = 0, head_height = 0, nut_flats = 0, nut_height = 0;
  Washer flat, lock;
  Mm wrench = 0, standard_hole = 0, oversize_hole = 0, edge_minimum = 0;
  Mm thread_length = 0;
  std::optional<Mm> length_plus, length_minus;  // at every length, or
  std::vector<LengthTolerance> length_tolerances;
  std::vector<Mm> lengths;
  Tools tools;
};

struct SpeciesEntry {
  Name name;
  double green_lb_per_ft3 = 0;
  double spread = 0.2;  // FPL Technical Note 218: single logs differ by up to a fifth
  std::string source;
};

struct TyreEntry {
  Name name;
  Kg load = 0;
  std::string source;
};

struct CatalogFile {
  std::string source;
  std::vector<SectionEntry> sections;
  std::vector<BoltEntry> bolts;
  std::vector<SpeciesEntry> species;
  std::vector<TyreEntry> tyres;
};

template <class V>
void describe(V& v, PublishedEntry& p) {
  v.text("source", p.source, "Handbook and table the figures come from");
  v.mass("weight_per_foot", p.weight_per_foot, {0.01, 1000},
         "Mass of one foot of it; from here to iy_in4, or from mass_per_metre to iy_cm4", v.optional);
  v.number("area_in2", p.area_in2, {0.01, 1000}, "Area, square inches", v.optional);
  v.number("ix_in4", p.ix_in4, {0.001, 100000}, "Second moment about the axis along the flange, in4",
           v.optional);
  v.number("iy_in4", p.iy_in4, {0.001, 100000}, "Second moment about the axis along the depth, in4",
           v.optional);
  v.mass("mass_per_metre", p.mass_per_metre, {0.01, 1000}, "Mass of one metre of it", v.optional);
  v.number("area_cm2", p.area_cm2, {0.01, 10000}, "Area, square centimetres", v.optional);
  v.number("ix_cm4", p.ix_cm4, {0.001, 1000000}, "Second moment about the axis along the flange, cm4",
           v.optional);
  v.number("iy_cm4", p.iy_cm4, {0.001, 1000000}, "Second moment about the axis along the depth, cm4",
           v.optional);
  v.length("x_bar", p.x_bar, {0.1, 500}, "Centroid from the back of the web or leg, along the flange");
  v.length("y_bar", p.y_bar, {0, 500}, "Angle: centroid from the heel, along the depth", v.optional);
  v.length("wall", p.wall, {0.5, 100},
           "Tube: the wall the figures are worked out for, where that is not the one ordered", v.optional);
}

template <class V>
void describe(V& v, SectionEntry& s) {
  v.name("name", s.name, "Name the frame and kit files call it by");
  v.choice("shape", s.shape, {{"channel", Shape::channel}, {"angle", Shape::angle}, {"tube", Shape::tube}},
           "Shape");
  v.length("depth", s.depth, {5, 1000}, "Depth; an angle's standing leg");
  v.length("flange", s.flange, {5, 500}, "Flange width; an angle's flat leg; a tube's width");
  v.length("web", s.web, {0.5, 100}, "Web thickness; an angle's thickness; a tube's wall");
  v.length("flange_thickness", s.flange_thickness, {0.5, 100},
           "Channel: flange thickness, in the middle of the overhang or at thickness_at", v.optional);
  v.length("thickness_at", s.thickness_at, {1, 500},
           "Channel: from the back of the web to where flange_thickness is measured, where that is not the "
           "middle of the overhang",
           v.optional);
  v.number("flange_slope", s.flange_slope, {0, 0.25},
           "Channel: slope of the flanges' inner faces; 0 for parallel flanges, left out for 2 in 12",
           v.optional);
  v.length("root_radius", s.root_radius, {0, 100}, "Inside fillet; a tube's inside corner", v.optional);
  v.length("toe_radius", s.toe_radius, {0, 100}, "Inner corner of each free edge", v.optional);
  v.object("published", s.published, "Handbook figures", v.optional);
}

template <class V>
void describe(V& v, Washer& w) {
  v.length("inside", w.inside, {1, 200}, "Inside diameter");
  v.length("outside", w.outside, {2, 300}, "Outside diameter");
  v.length("thickness", w.thickness, {0.2, 30}, "Thickness");
}

template <class V>
void describe(V& v, Tools& t) {
  v.length("socket_outside", t.socket_outside, {3, 300}, "Outside of the socket", v.optional);
  v.length("socket_length", t.socket_length, {5, 300}, "Length of the socket", v.optional);
  v.length("wrench_width", t.wrench_width, {5, 500}, "Width over the open-end wrench's jaws", v.optional);
  v.length("wrench_thickness", t.wrench_thickness, {1, 100}, "Thickness of the jaws", v.optional);
  v.length("wrench_length", t.wrench_length, {20, 1000}, "From the bolt's middle to the end of the handle",
           v.optional);
}

template <class V>
void describe(V& v, LengthTolerance& t) {
  v.length("up_to", t.up_to, {3, 1000}, "Longest bolt it is for");
  v.length("plus", t.plus, {0, 10}, "How much longer than nominal such a bolt may be");
  v.length("minus", t.minus, {0, 10}, "How much shorter than nominal such a bolt may be");
}

template <class V>
void describe(V& v, BoltEntry& b) {
  v.name("name", b.name, "Name the kit and frame files call it by");
  v.text("source", b.source, "Standards the sizes come from");
  v.length("diameter", b.diameter, {2, 100}, "Nominal diameter");
  v.number("threads_per_inch", b.threads_per_inch, {1, 80}, "Inch threads; else give the pitch", v.optional);
  v.length("pitch", b.pitch, {0.2, 10}, "Metric thread pitch; else give threads_per_inch", v.optional);
  v.length("head_flats", b.head_flats, {3, 200}, "Head across flats");
  v.length("head_height", b.head_height, {1, 100}, "Head height, nominal");
  v.length("nut_flats", b.nut_flats, {3, 200}, "Nut across flats");
  v.length("nut_height", b.nut_height, {1, 100}, "Nut height, nominal (metric: greatest)");
  v.object("flat", b.flat, "Plain washer");
  v.object("lock", b.lock, "Spring lock washer, pressed flat");
  v.length("wrench", b.wrench, {3, 200}, "Wrench, across flats; the larger where head and nut differ");
  v.length("standard_hole", b.standard_hole, {2, 120}, "Standard (AISC) or medium (ISO 273) clearance hole");
  v.length("oversize_hole", b.oversize_hole, {2, 120}, "Oversize (AISC) or coarse (ISO 273) clearance hole");
  v.length("edge_minimum", b.edge_minimum, {2, 200}, "Least distance, hole centre to edge");
  v.length("thread_length", b.thread_length, {2, 200}, "Thread of a bolt long enough to have a plain shank");
  v.length("length_plus", b.length_plus, {0, 10}, "How much longer than nominal a bolt of any length may be",
           v.optional);
  v.length("length_minus", b.length_minus, {0, 10},
           "How much shorter than nominal a bolt of any length may be", v.optional);
  v.list("length_tolerances", b.length_tolerances, 20,
         "The same by length, shortest first, instead of length_plus and length_minus", v.optional);
  v.lengths("lengths", b.lengths, {3, 500}, 100, "Stock lengths, ascending");
  v.text("lengths_source", b.lengths_source, "Where the stock lengths come from");
  v.object("tools", b.tools, "Room its socket and wrench take; leave out for the usual sizes", v.optional);
}

template <class V>
void describe(V& v, SpeciesEntry& s) {
  v.name("name", s.name, "Name the order calls it by");
  v.number("green_lb_per_ft3", s.green_lb_per_ft3, {10, 120}, "Freshly felled wood, pounds per cubic foot");
  v.number("spread", s.spread, {0, 1}, "By what part a single log may be heavier; leave out for 0.2",
           v.optional);
  v.text("source", s.source, "Table the figure comes from");
}

template <class V>
void describe(V& v, TyreEntry& t) {
  v.name("name", t.name, "Size and load range");
  v.mass("load", t.load, {50, 10000}, "Load of one tyre at its load range's pressure");
  v.text("source", t.source, "Table the figure comes from");
}

template <class V>
void describe(V& v, CatalogFile& f) {
  v.text("source", f.source, "Where the file's figures come from");
  v.list("sections", f.sections, 500, "Rolled sections", v.optional);
  v.list("bolts", f.bolts, 200, "Bolt sizes with their nuts and washers", v.optional);
  v.list("species", f.species, 300, "Green density of trees", v.optional);
  v.list("tyres", f.tyres, 200, "Trailer tyres", v.optional);
}

}  // namespace bedwright
