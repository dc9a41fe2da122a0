# cmake -DOUT=assets.cpp -DREGULAR=font -DBOLD=font -DEXAMPLES="a.json;b.json" -P embed.cmake
# Writes the definitions of wasm/platform/assets.hpp with the files' bytes.

function(bytes_of file name)
  file(READ ${file} hex HEX)
  string(REGEX REPLACE "([0-9a-f][0-9a-f])" "0x\\1," list "${hex}")
  set(bytes "constexpr unsigned char ${name}[] = {${list}};\n" PARENT_SCOPE)
endfunction()

set(arrays "")
set(entries "")
bytes_of(${REGULAR} k_regular)
string(APPEND arrays "${bytes}")
bytes_of(${BOLD} k_bold)
string(APPEND arrays "${bytes}")
set(count 0)
foreach(file IN LISTS EXAMPLES)
  get_filename_component(name ${file} NAME_WE)
  bytes_of(${file} k_example_${count})
  string(APPEND arrays "${bytes}")
  string(APPEND entries "    {\"${name}\", text_of(k_example_${count})},\n")
  math(EXPR count "${count} + 1")
endforeach()

if(count EQUAL 0)
  set(examples "std::span<const Example> examples() { return {}; }")
else()
  set(examples "std::span<const Example> examples() {
  static const Example all[] = {\n${entries}  };
  return all;
}")
endif()

file(WRITE ${OUT} "#include \"wasm/platform/assets.hpp\"
namespace guywright::assets {
namespace {
${arrays}
[[maybe_unused]] std::string_view text_of(std::span<const unsigned char> bytes) {
  return {reinterpret_cast<const char*>(bytes.data()), bytes.size()};
}
}  // namespace
std::span<const unsigned char> font_regular() { return k_regular; }
std::span<const unsigned char> font_bold() { return k_bold; }
${examples}
}  // namespace guywright::assets
")
