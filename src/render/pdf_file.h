#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "render/qpdf_library.h"
#include "sheet/sheet.h"

namespace fretsheaf::render {

// A PDF in memory that objects are put into. Objects are handles, valid as long as the file.
class PdfFile {
 public:
  using Object = qpdf_oh;

  // `bytes` must outlive it.
  PdfFile(const QpdfLibrary& qpdf, std::string_view bytes);
  ~PdfFile();
  PdfFile(const PdfFile&) = delete;
  PdfFile& operator=(const PdfFile&) = delete;

  // False where something could not be read or made; then `written` is nothing.
  bool good() const { return qpdf_.has_error(data_) == 0; }

  Object root() { return qpdf_.get_root(data_); }
  Object page(int number) { return qpdf_.get_page_n(data_, static_cast<std::size_t>(number)); }  // from 0

  Object null() { return qpdf_.oh_new_null(data_); }
  Object yes() { return qpdf_.oh_new_bool(data_, 1); }
  Object number(int value) { return qpdf_.oh_new_integer(data_, value); }
  Object name(const char* name) { return qpdf_.oh_new_name(data_, name); }
  Object length(double points);  // two decimals
  Object ascii(const std::string& text) { return qpdf_.oh_new_string(data_, text.c_str()); }
  Object text(const std::string& utf8);
  Object array() { return qpdf_.oh_new_array(data_); }
  Object dictionary() { return qpdf_.oh_new_dictionary(data_); }
  Object stream(const std::string& bytes);
  Object indirect(Object object) { return qpdf_.make_indirect_object(data_, object); }

  void append(Object array, Object item) { qpdf_.oh_append_item(data_, array, item); }
  void set(Object dictionary, const char* key, Object value) { qpdf_.oh_replace_key(data_, dictionary, key, value); }
  void remove(Object dictionary, const char* key) { qpdf_.oh_remove_key(data_, dictionary, key); }
  Object dictionary_of(Object stream) { return qpdf_.oh_get_dict(data_, stream); }

  // The drawing of a page, and another in its place.
  std::string drawing(Object page);
  void set_drawing(Object page, const std::string& bytes);

  // Every CID-keyed TrueType font.
  template <typename Visit>
  void for_each_cid_font(Visit&& visit);

  // The whole file, the same for the same objects.
  std::optional<std::string> written();

 private:
  const QpdfLibrary& qpdf_;
  qpdf_data data_;
};

template <typename Visit>
void PdfFile::for_each_cid_font(Visit&& visit) {
  const Object size = qpdf_.oh_get_key(data_, qpdf_.get_trailer(data_), "/Size");
  const int objects = qpdf_.oh_get_int_value_as_int(data_, size);
  for (int id = 1; id < objects; ++id) {
    const Object object = qpdf_.get_object_by_id(data_, id, 0);
    if (qpdf_.oh_is_dictionary(data_, object) == 0) continue;
    const Object subtype = qpdf_.oh_get_key(data_, object, "/Subtype");
    if (qpdf_.oh_is_name(data_, subtype) == 0) continue;
    if (std::string_view(qpdf_.oh_get_name(data_, subtype)) == "/CIDFontType2") visit(object);
  }
}

}  // namespace fretsheaf::render
