# What `cmake --install` puts where, by GNUInstallDirs; and the Debian package that CPack makes of it (the target
# `package`). Words, codes and the tables of fonts are built into the program; templates are read from its data folder,
# and the tables of fonts lie there too, for those who write a template.
set(data ${CMAKE_INSTALL_DATADIR}/fretsheaf)
install(DIRECTORY ${PROJECT_SOURCE_DIR}/templates ${PROJECT_SOURCE_DIR}/fonts DESTINATION ${data}
        FILES_MATCHING PATTERN "*.toml" PATTERN "README.md")
install(DIRECTORY ${PROJECT_SOURCE_DIR}/demo-lessons DESTINATION ${CMAKE_INSTALL_DOCDIR}
        FILES_MATCHING PATTERN "*.lesson.toml" PATTERN "*.md" PATTERN "*.svg" PATTERN "*.png"
        PATTERN handouts EXCLUDE)
install(FILES ${PROJECT_SOURCE_DIR}/README.md DESTINATION ${CMAKE_INSTALL_DOCDIR})
install(FILES ${PROJECT_SOURCE_DIR}/LICENSE DESTINATION ${CMAKE_INSTALL_DOCDIR} RENAME copyright)

set(pages ${PROJECT_SOURCE_DIR}/src/command/pages)
install(FILES ${pages}/fretsheaf.1 DESTINATION ${CMAKE_INSTALL_MANDIR}/man1)
install(FILES ${pages}/fretsheaf.bash DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions
        RENAME fretsheaf)
# Debian's zsh looks for what packages bring in a folder of another name than for what is installed by hand.
install(CODE "
  set(functions site-functions)
  if(CMAKE_INSTALL_PREFIX MATCHES \"/usr$\")
    set(functions vendor-completions)
  endif()
  file(INSTALL \"${pages}/_fretsheaf\" DESTINATION \"\${CMAKE_INSTALL_PREFIX}/${CMAKE_INSTALL_DATADIR}/zsh/\${functions}\")
")
install(FILES ${pages}/fretsheaf.fish DESTINATION ${CMAKE_INSTALL_DATADIR}/fish/vendor_completions.d)

# The packages of the fonts that fonts.toml knows, each once.
file(STRINGS ${PROJECT_SOURCE_DIR}/fonts/fonts.toml font_lines REGEX "^package = ")
list(TRANSFORM font_lines REPLACE "^package = \"(.*)\"$" "\\1" OUTPUT_VARIABLE font_packages)
list(REMOVE_DUPLICATES font_packages)
list(SORT font_packages)

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME fretsheaf)
set(CPACK_PACKAGE_CONTACT "Eelgrass Strings <shed@eelgrass.example>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "typesetter for the handouts of bass, guitar and ukulele teachers")
set(CPACK_PACKAGE_DESCRIPTION "A teacher writes one plain-text lesson file, and gets a printed handout that a student
reads on a music stand: rhythm over tablature, chords, degrees, a tempo ladder
and practice notes, in any key, as PDF, SVG and MusicXML.")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION text)
# The libraries that are linked come from dpkg-shlibdeps. Those that are loaded only where a lesson needs them are named
# here, with their packages; tests/house looks through the sources for them.
set(loaded_libraries
    "libqrencode.so.4 libqrencode4"
    "librsvg-2.so.2 librsvg2-2"
    "libxml2.so.2 libxml2"
    "libzip.so.4 libzip4")
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
list(TRANSFORM loaded_libraries REPLACE "^.* " "" OUTPUT_VARIABLE loaded_packages)
list(JOIN loaded_packages ", " loaded_packages)
list(JOIN font_packages ", " font_packages)
set(CPACK_DEBIAN_PACKAGE_DEPENDS "${loaded_packages}, ${font_packages}")
set(CPACK_OUTPUT_FILE_PREFIX ${PROJECT_BINARY_DIR}/package)
include(CPack)
