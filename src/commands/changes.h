// What an order draws now against what was released of it before, in the shop's words.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "commands/make_packet.h"
#include "commands/session.h"
#include "packet/packet.h"
#include "packet/record.h"

namespace bedwright {

// What is drawn now under the letter of `earlier`, which it is not: values, parts and files
// that differ, and how to raise the letter.
std::string same_letter_text(const Recorded& earlier, const Loaded& now, const MadeRelease& made,
                             Progress& progress);

// The last release before this one: of the letter that stands before it in the order's
// table, else the latest.
std::optional<Recorded> last_release(const std::vector<Recorded>& of_order, const Order& order);

// What the new letter changes against the release it revises: values, parts, and which sheets
// to print and files to send again. What differs by letter, date and revision table alone
// does not count.
std::string since_text(const MadeRelease& made, const Loaded& now, const Recorded& earlier);

// Files by what is done with them: to send, to print, to read. Empty where there are none.
std::string files_text(const Differences& differences);

// The same where nothing is to be done: files this program would write otherwise.
std::string otherwise_text(const Differences& differences);

}  // namespace bedwright
