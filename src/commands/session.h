// What every command that reads an order shares.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "commands/build.h"
#include "commands/commands.h"
#include "examine/examine.h"
#include "packet/packet_files.h"
#include "params/assembly_text.h"
#include "rules/clash/pair_memory.h"

namespace bedwright {

// An order examined, with the customer's sheets filled in.
struct Loaded {
  std::unique_ptr<Examined> examined;
  AssemblyText assembly = {};
  std::vector<InputFile> inputs = {};  // the job's files and those of the assembly sheets
};

// Reads, lays out and examines. On bad input prints every problem to standard error and
// returns nothing.
std::optional<Loaded> load(const OrderArguments& arguments, const ExamineOptions& options);

// The same, with what is wrong given back instead of printed.
std::optional<Loaded> load(const OrderArguments& arguments, const ExamineOptions& options,
                           std::vector<Problem>& problems);

// An order that is examined already.
std::optional<Loaded> with_words(std::unique_ptr<Examined> examined, const std::string& order_path,
                                 std::vector<Problem>& problems);

// Every problem, a line each, and how many.
void print_problems(const std::vector<Problem>& problems);

// What is wrong with the customer's assembly sheets for this bed; their files join `inputs`.
std::vector<Problem> assembly_problems(const Examined& examined, const std::string& order_path,
                                       std::vector<InputFile>& inputs);

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
  std::vector<Finding> untried;  // with all that the rules propose, enough alone or not
};

// All rules, with the kernel behind the pairs the cheap test cannot decide; the
// remedies of stops are tried (advice/advice.h).
std::optional<Loaded> load_and_advise(const OrderArguments& arguments, Progress& progress,
                                      Leads* leads = nullptr);

// What the packet of a loaded order is made from; `input_digest` is the packet's.
PacketInput packet_input(const Loaded& loaded, PacketState state, const std::string& input_digest,
                         Progress& progress);

// Columns of the terminal on standard output, or a page's when there is none.
int columns();

// Findings as a table on standard output, coloured when that is a terminal.
void print_findings(const Examined& examined);

}  // namespace bedwright
