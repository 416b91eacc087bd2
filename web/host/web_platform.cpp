#include "web/host/web_platform.h"

#include <emscripten/em_js.h>
#include <emscripten/em_macros.h>

#include "web/host/inbox.h"

// JavaScript is laid out by hand: clang-format does not know it.
// clang-format off
EM_JS(void, host_wake, (), { Module.host.wake(); })
EM_JS(int, host_rest, (), { return Module.host.rest(); })
EM_JS(void, host_want_rest, (), { Module.host.wantRest(); })
EM_JS(int, host_copy_text, (const char* text, int size), {
  return Module.host.copyText(UTF8ToString(text, size)) ? 1 : 0;
})
EM_JS(void, host_page_address, (), { Module.host.push(Module.host.pageAddress()); })
EM_JS(void, host_fragment, (), { Module.host.push(Module.host.fragment()); })
EM_JS(void, host_own_fragment, (), { Module.host.push(Module.host.ownFragment()); })
EM_JS(void, host_replace_fragment, (const char* text, int size), {
  Module.host.replaceFragment(UTF8ToString(text, size));
})
EM_JS(int, host_stored, (const char* key, int size), {
  const text = Module.host.stored(UTF8ToString(key, size));
  if (text === null) return 0;
  Module.host.push(text);
  return 1;
})
EM_JS(int, host_store, (const char* key, int key_size, const char* text, int size), {
  return Module.host.store(UTF8ToString(key, key_size), UTF8ToString(text, size)) ? 1 : 0;
})
EM_JS(int, host_can_share, (), { return Module.host.canShare() ? 1 : 0; })
EM_JS(void, host_share, (const char* title, int title_size, const char* address, int size), {
  Module.host.share(UTF8ToString(title, title_size), UTF8ToString(address, size));
})
EM_JS(void, host_save_file, (const char* name, int name_size, const char* mime, int mime_size,
                             const char* bytes, int size), {
  Module.host.saveFile(UTF8ToString(name, name_size), UTF8ToString(mime, mime_size),
                       HEAPU8.slice(bytes, bytes + size));
})
EM_JS(void, host_open_file, (const char* purpose, int purpose_size, const char* accept, int size), {
  Module.host.openFile(UTF8ToString(purpose, purpose_size), UTF8ToString(accept, size));
})
EM_JS(void, host_print_document, (const char* html, int size), {
  Module.host.printDocument(UTF8ToString(html, size));
})
EM_JS(void, host_show_picture, (const char* svg, int svg_size, const char* words, int size), {
  Module.host.showPicture(UTF8ToString(svg, svg_size), UTF8ToString(words, size));
})
// clang-format on

namespace widegate {
namespace {

int size_of(std::string_view text) { return static_cast<int>(text.size()); }

}  // namespace

void WebPlatform::wake() { host_wake(); }

RestOfProgram WebPlatform::rest() const { return static_cast<RestOfProgram>(host_rest()); }

void WebPlatform::want_rest() { host_want_rest(); }

bool WebPlatform::copy_text(std::string_view text) {
  return host_copy_text(text.data(), size_of(text)) != 0;
}

std::string WebPlatform::page_address() const {
  host_page_address();
  return take_pushed();
}

std::string WebPlatform::fragment() const {
  host_fragment();
  return take_pushed();
}

std::string WebPlatform::own_fragment() const {
  host_own_fragment();
  return take_pushed();
}

void WebPlatform::replace_fragment(std::string_view fragment) {
  host_replace_fragment(fragment.data(), size_of(fragment));
}

std::optional<std::string> WebPlatform::stored(std::string_view key) const {
  if (host_stored(key.data(), size_of(key)) == 0) return std::nullopt;
  return take_pushed();
}

bool WebPlatform::store(std::string_view key, std::string_view text) {
  return host_store(key.data(), size_of(key), text.data(), size_of(text)) != 0;
}

bool WebPlatform::can_share() const { return host_can_share() != 0; }

void WebPlatform::share(std::string_view title, std::string_view address) {
  host_share(title.data(), size_of(title), address.data(), size_of(address));
}

void WebPlatform::save_file(std::string_view name, std::string_view mime, std::string_view bytes) {
  host_save_file(name.data(), size_of(name), mime.data(), size_of(mime), bytes.data(),
                 size_of(bytes));
}

void WebPlatform::open_file(std::string_view purpose, std::string_view accept) {
  host_open_file(purpose.data(), size_of(purpose), accept.data(), size_of(accept));
}

void WebPlatform::print_document(std::string_view html) {
  host_print_document(html.data(), size_of(html));
}

void WebPlatform::show_picture(std::string_view svg, std::string_view words) {
  host_show_picture(svg.data(), size_of(svg), words.data(), size_of(words));
}

}  // namespace widegate
