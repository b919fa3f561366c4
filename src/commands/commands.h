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
  std::string out;  // folder that holds one folder for each order; empty: Home::out()
};
ExitCode draw_command(const DrawArguments& arguments);

struct OfferArguments : OrderArguments {
  std::vector<std::string> vary;   // KEY=VALUES (params/vary.h)
  std::string part;                // "K/N"; empty: all
  std::vector<std::string> merge;  // parts' offer.json instead of an order
  std::string out;                 // folder; empty: <order number>-offer in Home::out()
};
ExitCode offer_command(const OfferArguments& arguments);

struct CompareArguments {
  std::string a, b;  // order files
  bool json = false;
};
ExitCode compare_command(const CompareArguments& arguments);

ExitCode schema_command(const std::string& which);

// Empty code: all of them, a line each.
ExitCode explain_command(const std::string& code);

struct NewArguments {
  std::string file;
  bool metric = false;
};
ExitCode new_command(const NewArguments& arguments);

}  // namespace bedwright
