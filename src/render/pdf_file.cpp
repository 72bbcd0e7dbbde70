#include "render/pdf_file.h"

#include <cstdlib>

#include "sheet/number.h"

namespace fretsheaf::render {

PdfFile::PdfFile(const QpdfLibrary& qpdf, std::string_view bytes) : qpdf_(qpdf), data_(qpdf.init()) {
  qpdf_.silence_errors(data_);
  qpdf_.set_suppress_warnings(data_, 1);
  qpdf_.read_memory(data_, "handout", bytes.data(), bytes.size(), nullptr);
}

PdfFile::~PdfFile() {
  qpdf_.cleanup(&data_);
}

PdfFile::Object PdfFile::length(double points) {
  return qpdf_.oh_new_real_from_string(data_, sheet::fixed(points, 2).c_str());
}

PdfFile::Object PdfFile::text(const std::string& utf8) {
  return qpdf_.oh_new_unicode_string(data_, utf8.c_str());
}

PdfFile::Object PdfFile::stream(const std::string& bytes) {
  const Object stream = qpdf_.oh_new_stream(data_);
  qpdf_.oh_replace_stream_data(data_, stream, reinterpret_cast<const unsigned char*>(bytes.data()), bytes.size(),
                               null(), null());
  return stream;
}

std::string PdfFile::drawing(Object page) {
  unsigned char* bytes = nullptr;
  std::size_t size = 0;
  if (qpdf_.oh_get_page_content_data(data_, page, &bytes, &size) != 0) return {};
  std::string drawing(reinterpret_cast<const char*>(bytes), size);
  std::free(bytes);  // as the library asks
  return drawing;
}

void PdfFile::set_drawing(Object page, const std::string& bytes) {
  qpdf_.oh_replace_key(data_, page, "/Contents", stream(bytes));
}

std::optional<std::string> PdfFile::written() {
  if (!good()) return std::nullopt;
  qpdf_.init_write_memory(data_);
  qpdf_.set_minimum_pdf_version(data_, "1.7");
  qpdf_.set_deterministic_ID(data_, 1);
  qpdf_.write(data_);
  if (!good()) return std::nullopt;
  return std::string(reinterpret_cast<const char*>(qpdf_.get_buffer(data_)), qpdf_.get_buffer_length(data_));
}

}  // namespace fretsheaf::render
