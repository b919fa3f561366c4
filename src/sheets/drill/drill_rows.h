// The holes of one made part as the shop reads them: numbered from the front
// end, lettered by size, measured from one end and one named edge. The drill
// drawing and the drill list both come from here.
#pragma once

#include <string>
#include <vector>

#include "bed/bed.h"

namespace bedwright {

// How a face is laid down to be drilled: seen from outside the steel, front end
// to the left.
struct FaceView {
  Face face = Face::web;
  std::string name;     // "WEB"
  std::string seen;     // "seen from the web's back"
  std::string edge;     // across distances are from here: "top edge", "web back", "heel"
  bool edge_up = true;  // the named edge is the upper one in the view
  Mm width = 0;         // of the face, across
  bool mitred = false;  // its ends run askew where the member is mitred
};

// `upright` names a channel's edges and flanges by top and bottom; without it, by
// upper and lower as drawn.
FaceView face_view(const Section& section, Face face, bool upright);

// Which end of the bed a part's first end is at, facing forward; `unnamed` where items
// differ or lie askew.
enum class FirstEnd { unnamed, front, rear, left, right };
const char* words_of(FirstEnd end);        // "FRONT END"; "END MARKED 0" where it is unnamed
const char* words_opposite(FirstEnd end);  // "REAR END"; "OTHER END"

// How a part sits in the bed, for the words on its sheet.
struct Setting {
  FirstEnd first_end = FirstEnd::unnamed;
  bool upright = false;      // every item's Z is the bed's
  std::string note;          // which items are turned over, where any is; else empty
  Side hand = Side::middle;  // left or right where the part serves that side alone
};
Setting setting(const Bed& bed, int part);

// Angle of a slot's long axis in the face's view, in [-pi/2, pi/2]; 0 for a round hole.
Radians turned_in_view(const FaceHole& hole);

// Distance across from the named edge of a hole's centre.
Mm across(const Section& section, const FaceHole& hole);

struct DrillRow {
  int number = 0;         // through the part, from 1
  char letter = 'A';      // equal diameter, slot length and direction, and process
  std::size_t index = 0;  // into the part's holes
  Mm along = 0;           // from the front end
  Mm across = 0;
  FaceHole hole;  // of a plate, face unused
};

// One size of hole: all rows that carry its letter.
struct DrillSize {
  char letter = 'A';
  int count = 0;
  Hole hole;                   // the first of them
  Radians turned = 0;          // slot from along the part, counter-clockwise in the view, as turned_in_view
  std::vector<Kind> purposes;  // each once
};

struct DrillRows {
  std::vector<Face> faces;       // that carry holes, in the order of their first number
  std::vector<DrillRow> rows;    // by number: face by face, along, then across
  std::vector<DrillSize> sizes;  // by letter
};

// Holes of a member, save those it came with. Throws std::invalid_argument past
// 26 sizes.
DrillRows drill_rows(const Member& member);

// "cut", "drilled", "as bought"; a drilled slot is "ends drilled, cut between".
std::string process_name(const Hole& hole);

}  // namespace bedwright
