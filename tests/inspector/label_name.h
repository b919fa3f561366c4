// The name a document of the kernel gives to a label, as UTF-8; empty where it has none.
#pragma once

#include <TCollection_ExtendedString.hxx>
#include <TDF_Label.hxx>
#include <TDataStd_Name.hxx>
#include <string>

inline std::string name_of(const TDF_Label& label) {
  Handle(TDataStd_Name) name;
  if (!label.FindAttribute(TDataStd_Name::GetID(), name)) return {};
  const TCollection_ExtendedString& text = name->Get();
  std::string utf8(text.LengthOfCString() + 1, '\0');
  char* start = utf8.data();
  text.ToUTF8CString(start);
  return utf8.c_str();
}
