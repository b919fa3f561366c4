// What every command that reads an order shares.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "bed/bed.h"
#include "checks/pair_memory.h"
#include "checks/rule.h"
#include "commands/commands.h"
#include "params/assembly_text.h"
#include "params/job.h"

namespace bedwright {

struct Loaded {
  Job job;
  Bed bed;
  AssemblyText assembly = {};  // the customer's sheets, filled in
};

// Reads and lays out. On bad input prints every problem to standard error and
// returns nothing.
std::optional<Loaded> load(const OrderArguments& arguments);

// What is wrong with the customer's assembly sheets for this bed. Their files join the
// job's inputs.
std::vector<Problem> assembly_problems(Job& job, const Bed& bed, const std::string& order_path);

bool stops(const std::vector<Finding>& findings);

// The checkout, or wherever the program's own params/ and templates/ are.
std::filesystem::path home();

// The version built, as "0.1.0".
std::string version();

// A line on standard error that says what is being done, when that is a
// terminal; nothing otherwise.
class Progress {
 public:
  Progress();
  ~Progress();
  Progress(const Progress&) = delete;
  Progress& operator=(const Progress&) = delete;
  void step(const std::string& what);

 private:
  bool terminal_;
};

// What a check leaves for a search that follows it.
struct Leads {
  PairMemory memory;
  std::vector<Finding> untried;  // with all the rules propose, what does alone and what does not
};

// All rules, with the kernel behind the pairs the cheap test cannot decide; the
// remedies of stops are tried (advice/advice.h).
std::vector<Finding> check(const Loaded& loaded, const OrderArguments& arguments, Progress& progress, Leads* leads = nullptr);

// Every rule over one bed, in one place. Without a judge, pairs the cheap test
// cannot decide are warnings.
// `load_remedies`: as load_findings takes it.
std::vector<Finding> check_once(const Job& job, const Bed& bed, PairJudge* judge, bool load_remedies = true);

Figures figures_of(const Heading& heading);

// The findings of the order with these overrides, whose files `store` keeps;
// nothing when it then does not read or cannot be laid out. `exact`: with the
// kernel behind the cheap test of pairs, asked only what `memory` does not know.
// Remedies are not tried.
std::optional<std::vector<Finding>> check_variant(FileStore& store, const std::string& order, const std::vector<std::string>& sets,
                                                  bool exact, PairMemory* memory = nullptr);

// Columns of the terminal on standard output, or a page's when there is none.
int columns();

// Findings as a table on standard output, coloured when that is a terminal.
void print_findings(const std::vector<Finding>& findings, const Loaded& loaded);

}  // namespace bedwright
