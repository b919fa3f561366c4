// The command line: reads the arguments, calls one command, returns its code.
#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <CLI/CLI.hpp>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <exception>
#include <filesystem>
#include <new>

#include "commands/commands.h"
#include "commands/home.h"
#include "commands/session.h"
#include "commands/tell.h"
#include "commands/words.h"

namespace {

using namespace bedwright;

void set_option(CLI::App& command, OrderArguments& arguments) {
  command
      .add_option("--set", arguments.sets,
                  "Try another value without touching the file: KEY=VALUE, as track.rail_length=\"84 in\". "
                  "Keys that start with kit. or frame. reach into those files. May be given again and again.")
      ->take_all()
      ->allow_extra_args(false)
      ->type_name("KEY=VALUE");
}

void order_options(CLI::App& command, OrderArguments& arguments) {
  command.add_option("ORDER", arguments.order, "The order file, as params/orders/base.yaml")->required();
  set_option(command, arguments);
}

const char* const exit_codes =
    "Exit codes: 0 released or nothing stops it, 1 stopped by a finding, 2 something in the input, 3 a fault "
    "of the program.\n"
    "The program advises; it does not certify. Local codes and licensed practice come first.";

const char* const out_folder = "out/ of the source tree it was built in; installed, of the current folder";

std::string version_line() {
  const std::string line = "bedwright " + version();
  return build_name() == version() ? line : line + ", build " + build_name();
}

int run(int argc, char** argv) {
  CLI::App app{
      "Bedwright: from one order file to a checked trailer bed and the files to cut, drill and weld it."};
  app.name("bedwright");
  app.set_version_flag("--version", version_line());
  app.require_subcommand(1);
  app.footer(std::string("Each command tells more:  bedwright draw --help\n") + exit_codes);

  DrawArguments draw;
  CLI::App* draw_app = app.add_subcommand("draw", "Check an order and write its files");
  order_options(*draw_app, draw);
  draw_app->add_flag("--draft", draw.draft,
                     "Write model, picture and lists for discussion even when something stops the bed; never "
                     "cut or drill files");
  draw_app->add_option("--out", draw.out,
                       fmt::format("Folder that gets one folder for each order (default: {})", out_folder));
  CLI::Option* replace =
      draw_app
          ->add_option("--replace", draw.replace,
                       "Withdraw what is released under this letter, for this reason, and keep it beside")
          ->type_name("WHY");
  draw_app->footer(
      "Example:\n  bedwright draw params/orders/base.yaml\n"
      "Writes out/QB-1041/A/, which is never changed again: bed.step (the model), bed.svg (a picture), cut/ "
      "(plasma table), drill/ (drill "
      "press),\n"
      "lists/ (parts, cut list, drill list, hardware), report.txt, report.json and inputs/ (what it was made "
      "from).\nWith --set or --draft, or when anything stops the bed: a trial, in out/QB-1041/trial/.");

  CheckArguments check;
  CLI::App* check_app =
      app.add_subcommand("check", "Say whether an order goes together, and what to change if not");
  order_options(*check_app, check);
  check_app->add_flag("--json", check.json, "Print the report as JSON");
  CLI::Option* suggest = check_app->add_flag("--suggest", check.suggest,
                                             "Look for the smallest set of changes that clears every stop, "
                                             "and print it as a diff of the order file");
  check_app
      ->add_option("--write", check.write,
                   "With --suggest: write the changed order to this file, which must not be there yet")
      ->needs(suggest);
  suggest->excludes("--json");
  check_app->footer(
      "Examples:\n  bedwright check params/orders/base.yaml --set track.rail_length=\"84 in\"\n"
      "  bedwright check params/orders/wrong.yaml --suggest --write params/orders/better.yaml");

  OfferArguments offer;
  CLI::App* offer_app =
      app.add_subcommand("offer", "Try every combination of some values, and map which can be offered");
  CLI::Option* offer_order =
      offer_app->add_option("ORDER", offer.order, "The order file the values are tried on");
  set_option(*offer_app, offer);
  offer_app
      ->add_option("--vary", offer.vary,
                   "KEY=VALUES: from, to and step, as track.rail_length=72..96in/1in; or one after another, "
                   "as track.bunk_pitch=20in,24in. Give it once a key")
      ->take_all()
      ->allow_extra_args(false)
      ->type_name("KEY=VALUES")
      ->needs(offer_order);
  offer_app->add_option("--part", offer.part, "Only the Kth of N parts; writes offer-K-of-N.json")
      ->type_name("K/N")
      ->needs(offer_order);
  offer_app
      ->add_option("--frames", offer.frames,
                   "Frame files of frames that stand: which take the order's track, with how much work")
      ->type_name("FRAME")
      ->check(CLI::ExistingFile)
      ->needs(offer_order);
  offer_app->add_option("--merge", offer.merge, "Join these parts into one map")
      ->type_name("FILE")
      ->check(CLI::ExistingFile)
      ->excludes(offer_order);
  offer_app->add_option("--out", offer.out,
                        fmt::format("Folder for the files (default: NUMBER-offer in {})", out_folder));
  offer_app->footer(
      "Examples:\n  bedwright offer params/orders/sizes.yaml --vary track.rail_length=72..96in/1in --vary "
      "track.extension_count=0..3\n"
      "  bedwright offer ORDER --vary ... --part 1/8 --out parts\n  bedwright offer --merge "
      "parts/offer-*.json --out map\n"
      "  bedwright offer ORDER --frames params/frames/lot/*.yaml\n"
      "Writes offer.csv, offer.json, offer.pdf and offer.svg (one file a page).");

  CompareArguments two;
  CLI::App* compare_app =
      app.add_subcommand("compare", "Tell part by part what differs between two orders or revisions");
  compare_app
      ->add_option("A", two.a,
                   "The order whose parts may be on the shelf; or a release's folder, as out/QB-1041/A")
      ->required();
  compare_app->add_option("B", two.b, "The order, or release, they are wanted for")->required();
  compare_app->add_flag("--json", two.json, "Print the comparison as JSON");
  compare_app->footer(
      "Example:\n  bedwright compare params/orders/base.yaml params/orders/one_extension.yaml");

  std::string schema_of = "order";
  CLI::App* schema_app =
      app.add_subcommand("schema", "Print the JSON Schema of a file, for editors that complete as you type");
  schema_app->add_option("FILE", schema_of, "order, kit, frame or built")->capture_default_str();
  schema_app->footer("Example:\n  bedwright schema order > order.schema.json");

  std::string code;
  CLI::App* explain_app =
      app.add_subcommand("explain", "Say what a rule asks, where it comes from and what to change");
  explain_app->add_option("CODE", code, "The code printed with a finding; leave out to list all");
  explain_app->footer("Example:\n  bedwright explain HOLE-FIT");

  NewArguments fresh;
  CLI::App* new_app = app.add_subcommand("new", "Write a starter order with a note on every line");
  new_app->add_option("FILE", fresh.file, "File to write; it must not be there yet")->required();
  new_app->add_flag("--metric", fresh.metric, "Millimetres and metric bolts");
  CLI::Option* from = new_app->add_option(
      "--from", fresh.from, "Write this order down with the values of --set in it, comments and all");
  from->type_name("ORDER")->excludes("--metric");
  SurveyArguments survey;
  CLI::Option* surveyed = new_app->add_option(
      "--survey", survey.frame,
      "Write a frame file to fill in at a frame that stands like this one, and a page to print");
  surveyed->type_name("FRAME")->excludes("--metric")->excludes(from);
  new_app->add_option("--set", fresh.sets, "With --from: a value that was tried, KEY=VALUE; again and again")
      ->take_all()
      ->allow_extra_args(false)
      ->type_name("KEY=VALUE")
      ->needs(from);
  new_app->footer(
      "Examples:\n  bedwright new params/orders/my_order.yaml\n  bedwright new --from "
      "params/orders/base.yaml --set track.rail_length=\"84 in\" params/orders/longer.yaml\n  bedwright new "
      "--survey params/frames/six_inch_plate.yaml params/frames/lot_frame_8.yaml");

  VerifyArguments verify;
  CLI::App* verify_app =
      app.add_subcommand("verify", "Say whether what was released is still as it was released");
  verify_app
      ->add_option("FOLDER", verify.folder, "A release, as out/QB-1041/A; an order's folder; or out, for all")
      ->required();
  verify_app->add_flag("--redraw", verify.redraw, "Also draw each again from its inputs/ and compare");
  verify_app->footer("Example:\n  bedwright verify out/QB-1041/A --redraw");

  SheetArguments sheet;
  CLI::App* sheet_app =
      app.add_subcommand("sheet", "Draw single sheets of a release again, as one document to print");
  sheet_app->add_option("FOLDER", sheet.folder, "The release, as out/QB-1041/A")->required();
  sheet_app->add_option("SHEET", sheet.sheets, "Names of sheets; leave out to see which there are");
  sheet_app->footer(
      "Example:\n  bedwright sheet out/QB-1041/A tab_layout drill_main\n"
      "Writes out/QB-1041/extra/A/: extra.pdf with these sheets and their further pages, and each as SVG. "
      "The release "
      "is "
      "never changed.");

  BuiltArguments built;
  CLI::App* built_app =
      app.add_subcommand("built", "Write down what was built from a release: serial number, day, notes");
  built_app->add_option("FOLDER", built.folder, "The release, as out/QB-1041/A")->required();
  built_app->add_option("--serial", built.serial,
                        "The bed's serial number; leave out to see what is written");
  built_app->add_option("--on", built.on, "Day it was finished, year-month-day (default: today)");
  built_app->add_option("--by", built.by, "Who built it");
  built_app->add_option("--note", built.notes, "What stands otherwise than drawn; again and again")
      ->take_all()
      ->allow_extra_args(false);
  built_app->footer(
      "Example:\n  bedwright built out/QB-1041/A --serial QM-0117 --note \"tab R7 stands 1/16 in to the "
      "rear\"\n"
      "Writes A.built.yaml beside the release, which never changes. The file may be changed by hand.");

  OrdersArguments orders;
  CLI::App* orders_app = app.add_subcommand("orders", "List what was drawn: number, revision, date, state");
  orders_app->add_option("--number", orders.number, "Only numbers with this in them");
  orders_app->add_option("--customer", orders.customer, "Only customers with this in their name");
  orders_app->add_option("--kit", orders.kit, "Only track kits with this in their name");
  orders_app->add_option("--touched-by", orders.touched_by,
                         "A revised kit file: which releases and standing frames it touches, and how");
  orders_app->add_option("--year", orders.year, "Only orders dated in this year");
  orders_app->add_option("--out", orders.out, "Folder that is looked in (default: out/ beside this program)");
  orders_app->add_flag("--json", orders.json, "Print the list as JSON");
  orders_app->footer(
      "Examples:\n  bedwright orders --customer farm --year 2026\n"
      "  bedwright orders --touched-by params/kits/tansy_t49.yaml");

  std::vector<std::string> commands;
  for (const CLI::App* command : app.get_subcommands(nullptr)) commands.push_back(command->get_name());
  if (const std::string fault = first_word_fault(argc > 1 ? argv[1] : "", commands); !fault.empty()) {
    tell("bedwright: {}\n", fault);
    return bad_input;
  }
  try {
    app.parse(argc, argv);
  } catch (const CLI::ExtrasError&) {
    const CLI::App& command = *app.get_subcommands().front();
    std::vector<std::string> options;
    for (const CLI::Option* option : command.get_options())
      for (const std::string& name : option->get_lnames()) options.push_back("--" + name);
    tell("bedwright {}: {}\n", command.get_name(), extra_word_fault(app.remaining(true), options));
    return bad_input;
  } catch (const CLI::ParseError& e) {
    const int help_or_version = 0;
    return app.exit(e) == help_or_version ? released : bad_input;
  }
  draw.replaces = replace->count() > 0;
  if (*draw_app) return draw_command(draw);
  if (*verify_app) return verify_command(verify);
  if (*sheet_app) return sheet_command(sheet);
  if (*built_app) return built_command(built);
  if (*orders_app) return orders_command(orders);
  if (*check_app) return check_command(check);
  if (*offer_app) return offer.frames.empty() ? offer_command(offer) : offer_frames(offer);
  if (*compare_app) return compare_command(two);
  if (*schema_app) return schema_command(schema_of);
  if (*explain_app) return explain_command(code);
  survey.file = fresh.file;
  if (surveyed->count() > 0) return survey_command(survey);
  return from->count() > 0 ? new_from_command(fresh) : new_command(fresh);
}

}  // namespace

// A stream that is closed would lend its number to the first file opened, and what is told
// would be written into that. Standard output must then fail, the others need not.
void hold_standard_streams() {
  for (const int fd : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO})
    if (::fcntl(fd, F_GETFD) == -1) ::open("/dev/null", fd == STDERR_FILENO ? O_WRONLY : O_RDONLY);
}

int main(int argc, char** argv) {
  hold_standard_streams();
  try {
    const int code = run(argc, argv);
    // A report that never reached its reader is no report.
    if (std::fflush(stdout) != 0) {
      tell("bedwright: cannot write to standard output: {}\n", std::strerror(errno));
      return bad_input;
    }
    return code;
  } catch (const NoHome& missing) {
    fmt::print(stderr, "bedwright: {}\n", missing.what());
    return bad_input;
  } catch (const std::bad_alloc&) {
    tell("bedwright: this machine has no memory left for it; close other programs, then try again\n");
    return bad_input;
  } catch (const std::exception& fault) {
    tell("bedwright: a fault of the program, not of your order: {}\n", fault.what());
    return our_fault;
  }
}
