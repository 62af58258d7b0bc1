// What the tests of pictures share: the labels of a scene, what is wrong with them, and whether a text is XML.
#pragma once

#include <cctype>
#include <string>
#include <string_view>
#include <vector>

#include "holdback/draw/scene.hpp"

namespace holdback::pictures {

inline std::vector<draw::Label> labels(const draw::Scene& scene) {
  std::vector<draw::Label> out;
  for (const auto& mark : scene.marks) {
    if (const auto* label = std::get_if<draw::Label>(&mark.shape)) out.push_back(*label);
  }
  return out;
}

/// The labels that reach out of the page.
inline std::string outside(const draw::Scene& scene) {
  std::string out;
  for (const auto& label : labels(scene)) {
    const auto box = draw::bounds(label);
    const bool inside = box.left >= 0 && box.top >= 0 && box.right <= scene.width && box.bottom <= scene.height;
    if (!inside) out += "'" + label.text + "' ";
  }
  return out;
}

/// The pairs of labels that share room.
inline std::string overlapping(const draw::Scene& scene) {
  const auto all = labels(scene);
  std::string out;
  for (std::size_t i = 0; i < all.size(); ++i) {
    for (std::size_t k = i + 1; k < all.size(); ++k) {
      if (draw::overlap(draw::bounds(all[i]), draw::bounds(all[k])))
        out += "'" + all[i].text + "' on '" + all[k].text + "' ";
    }
  }
  return out;
}

inline bool has_label(const draw::Scene& scene, std::string_view part) {
  for (const auto& label : labels(scene)) {
    if (label.text.find(part) != std::string::npos) return true;
  }
  return false;
}

template <typename Shape>
std::vector<Shape> shapes(const draw::Scene& scene, draw::MarkRole role) {
  std::vector<Shape> out;
  for (const auto& mark : scene.marks) {
    const auto* shape = std::get_if<Shape>(&mark.shape);
    if (shape != nullptr && mark.style.role == role) out.push_back(*shape);
  }
  return out;
}

/// Holds an XML text to the rules that matter here (XML 1.0, fifth edition: productions 2 Char, 10 AttValue, 14
/// CharData, 39 element): tags that close in order, attributes in double quotes and each once, no bare < or &, no
/// control character. What is wrong, in words; empty when it is well-formed.
class Xml {
 public:
  explicit Xml(std::string_view text) : text_(text) {}

  std::string fault() {
    if (text_.substr(0, 5) == "<?xml") at_ = text_.find("?>") + 2;
    std::vector<std::string> open;
    bool any = false;
    while (at_ < text_.size()) {
      const auto next = std::min(text_.find('<', at_), text_.size());
      if (const auto wrong = characters(text_.substr(at_, next - at_)); !wrong.empty()) return wrong;
      if (open.empty() && text_.substr(at_, next - at_).find_first_not_of(" \n") != std::string_view::npos)
        return "text outside of the root";
      if (next == text_.size()) break;
      const auto end = text_.find('>', next);
      if (end == std::string_view::npos) return "tag without end";
      const auto tag = text_.substr(next + 1, end - next - 1);
      at_ = end + 1;
      if (tag.empty()) return "empty tag";
      if (tag[0] == '/') {
        if (open.empty() || open.back() != tag.substr(1)) return "closes '" + std::string(tag) + "'";
        open.pop_back();
        continue;
      }
      if (open.empty() && any) return "second root";
      any = true;
      const bool closed = tag.back() == '/';
      const auto name = tag.substr(0, tag.find_first_of(" /"));
      if (const auto wrong = attributes(tag.substr(name.size(), tag.size() - name.size() - (closed ? 1 : 0)));
          !wrong.empty())
        return wrong;
      if (!closed) open.emplace_back(name);
    }
    return open.empty() ? "" : "not closed: " + open.back();
  }

 private:
  static std::string characters(std::string_view text) {
    for (std::size_t i = 0; i < text.size(); ++i) {
      const auto c = static_cast<unsigned char>(text[i]);
      if (c < 0x20 && c != '\n' && c != '\t') return "control character";
      if (c == '<') return "bare <";
      if (c != '&') continue;
      const auto entity = text.substr(i, text.find(';', i) - i + 1);
      if (entity != "&amp;" && entity != "&lt;" && entity != "&gt;" && entity != "&quot;") return "bare &";
    }
    return {};
  }

  static std::string attributes(std::string_view text) {
    std::vector<std::string_view> names;
    while (!text.empty()) {
      if (text[0] != ' ') return "no blank before '" + std::string(text) + "'";
      text.remove_prefix(1);
      const auto equals = text.find("=\"");
      if (equals == std::string_view::npos) return "no value in '" + std::string(text) + "'";
      const auto end = text.find('"', equals + 2);
      if (end == std::string_view::npos) return "quote without end";
      if (const auto wrong = characters(text.substr(equals + 2, end - equals - 2)); !wrong.empty()) return wrong;
      for (const auto& name : names) {
        if (name == text.substr(0, equals)) return "attribute twice: " + std::string(name);
      }
      names.push_back(text.substr(0, equals));
      text.remove_prefix(end + 1);
    }
    return {};
  }

  std::string_view text_;
  std::size_t at_{};
};

}  // namespace holdback::pictures
