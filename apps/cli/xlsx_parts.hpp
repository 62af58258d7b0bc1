// The parts of a workbook file (.xlsx): a ZIP archive of XML, unpacked within limits.
#pragma once

#include <cstddef>
#include <memory>
#include <optional>
#include <pugixml.hpp>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "holdback/model/problem.hpp"

struct zip;

namespace holdback::cli {

/// Why a workbook is not read. Caught where the reading begins and handed on as a Problem.
class Unreadable : public std::runtime_error {
 public:
  Unreadable(const std::string& what, std::string accepted, Position where = {})
      : std::runtime_error(what), accepted_(std::move(accepted)), where_(where) {}
  const std::string& accepted() const { return accepted_; }
  const Position& where() const { return where_; }

 private:
  std::string accepted_;
  Position where_;
};

/// True for bytes that begin as a ZIP archive does, and for those of an OLE file: an .xls, or a workbook with a
/// password.
bool is_zip(std::string_view bytes);
bool is_ole(std::string_view bytes);

/// An XML part that was read; the document stands on the text.
struct XmlPart {
  std::string text{};
  std::unique_ptr<pugi::xml_document> document{std::make_unique<pugi::xml_document>()};
};

/// A workbook file in memory. `bytes` must outlive it.
class WorkbookFile {
 public:
  static constexpr std::size_t most_packed = 32U << 20U;     // bytes of the file
  static constexpr std::size_t most_of_a_part = 64U << 20U;  // bytes, unpacked
  static constexpr std::size_t most_unpacked = 128U << 20U;  // bytes of all parts that are read
  static constexpr std::size_t most_tags = 8'000'000;        // of a part: each takes memory, however short

  /// Opens the archive; throws Unreadable when it is none, or too large.
  explicit WorkbookFile(std::string_view bytes);
  ~WorkbookFile();
  WorkbookFile(const WorkbookFile&) = delete;
  WorkbookFile& operator=(const WorkbookFile&) = delete;

  /// True when a part of that name is there; case does not count.
  bool has(const std::string& part) const;

  /// The part as a document; throws Unreadable when it is missing, encrypted, damaged, too large, or no XML.
  XmlPart xml(const std::string& part);

 private:
  std::string unpacked(const std::string& part);

  zip* archive_{};
  std::size_t total_{};
};

// Names in workbooks may carry any prefix ("x:row"); what stands behind it counts.

/// The name without its prefix.
std::string_view local_name(const char* name);

/// Children of that name.
std::vector<pugi::xml_node> children(const pugi::xml_node& node, std::string_view name);

/// The first of them; empty when there is none.
pugi::xml_node child(const pugi::xml_node& node, std::string_view name);

/// An attribute by its name without prefix, or with one ("r:id").
std::string attribute(const pugi::xml_node& node, std::string_view name, bool prefixed = false);

/// All text that stands directly in a node.
std::string text_in(const pugi::xml_node& node);

}  // namespace holdback::cli
