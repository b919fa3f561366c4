// One function for each command. Each prints what a person needs to standard output,
// problems to standard error, and returns the exit code.
#pragma once

#include <string>
#include <vector>

namespace bedwright {

// What the program's exit code says.
enum ExitCode {
  released = 0,   // or checked with no stop
  stopped = 1,    // a finding stops the bed
  bad_input = 2,  // something the user gave, or a place that cannot be written
  our_fault = 3,  // a fault of the program itself
};

struct OrderArguments {
  std::string order;              // path of the order file
  std::vector<std::string> sets;  // overrides, KEY=VALUE
};

struct CheckArguments : OrderArguments {
  bool json = false;     // the report on standard output instead of the table
  bool suggest = false;  // also look for the smallest set of changes that clears every stop
  std::string write;     // file for the order with those changes; it must not be there yet
};
ExitCode check_command(const CheckArguments& arguments);

struct DrawArguments : OrderArguments {
  bool draft = false;
  bool replaces = false;  // --replace was given, with
  std::string replace;    // why a release of this letter is withdrawn for this one
  std::string out;        // folder that holds one folder for each order; empty: Home::out()
};
ExitCode draw_command(const DrawArguments& arguments);

struct OfferArguments : OrderArguments {
  std::vector<std::string> vary;    // KEY=VALUES (params/vary.h)
  std::string part;                 // "K/N"; empty: all
  std::vector<std::string> merge;   // parts' offer.json instead of an order
  std::vector<std::string> frames;  // frame files to try instead of values
  std::string out;                  // folder; empty: <order number>-offer in Home::out()
};
ExitCode offer_command(const OfferArguments& arguments);
// Of the order's track on each of `frames`: the work its tabs want, as a table.
ExitCode offer_frames(const OfferArguments& arguments);

struct CompareArguments {
  std::string a, b;  // order files, or folders of releases
  bool json = false;
};
ExitCode compare_command(const CompareArguments& arguments);

ExitCode schema_command(const std::string& which);

// Empty code: all of them, a line each.
ExitCode explain_command(const std::string& code);

struct NewArguments {
  std::string file;
  bool metric = false;
  std::string from;               // an order to write down with `sets` in it; empty: a starter
  std::vector<std::string> sets;  // overrides, KEY=VALUE
};
ExitCode new_command(const NewArguments& arguments);
ExitCode new_from_command(const NewArguments& arguments);

struct SurveyArguments {
  std::string frame;  // the frame file it is begun from
  std::string file;   // to be written, with a page to print beside it (.pdf)
};
ExitCode survey_command(const SurveyArguments& arguments);

struct VerifyArguments {
  std::string folder;   // of a release, of an order, or of all
  bool redraw = false;  // also draw it again and compare
};
ExitCode verify_command(const VerifyArguments& arguments);

struct SheetArguments {
  std::string folder;               // of a release
  std::vector<std::string> sheets;  // names, without .pdf; none: tell which there are
};
ExitCode sheet_command(const SheetArguments& arguments);

struct BuiltArguments {
  std::string folder;          // of a release
  std::string serial, on, by;  // empty serial: show what is written; empty day: today
  std::vector<std::string> notes;
};
ExitCode built_command(const BuiltArguments& arguments);

struct OrdersArguments {
  std::string out;                          // empty: out/ of this checkout
  std::string number, customer, kit, year;  // a part of each; the year whole
  std::string touched_by;                   // a kit file: what of it is touched by that; empty: the list
  bool json = false;
};
ExitCode orders_command(const OrdersArguments& arguments);

}  // namespace bedwright
