// What became of an order: the same word in report and manifest.
#pragma once

namespace bedwright {

enum class PacketState {
  released,  // nothing stops it: everything is written
  stopped,   // a finding stops it: only the report is written
  draft,     // asked for as a draft: model, picture and lists, nothing to cut or drill
};

inline const char* word(PacketState state) {
  switch (state) {
    case PacketState::released:
      return "released";
    case PacketState::draft:
      return "draft";
    case PacketState::stopped:
      break;
  }
  return "stopped";
}

}  // namespace bedwright
