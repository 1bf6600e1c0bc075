# Two Debian packages by `cpack` in the build folder: the program with its manual, and what is
# needed to build on its libraries. What the program links against is found from its binaries
# (dpkg-shlibdeps, package dpkg-dev); fonts and the view's display are asked for by name.
set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME deadshore)
set(CPACK_PACKAGE_CONTACT "Deadshore maintainers <maintainers@deadshore.example>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "${PROJECT_DESCRIPTION}")
set(CPACK_RESOURCE_FILE_LICENSE "${PROJECT_SOURCE_DIR}/LICENSE")
set(CPACK_STRIP_FILES ON)
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_COMPONENTS_ALL program development)
set(CPACK_COMPONENT_PROGRAM_DESCRIPTION
    "Works out how a masonry wall stands on needles and props while an opening is cut beneath it
and a permanent steel beam goes in: loads, needles, props, beam, lift, stages, a design note.
An aid to judgement: it does not replace the structural engineer or building control.")
set(CPACK_COMPONENT_DEVELOPMENT_DESCRIPTION
    "Static libraries, headers and CMake files to build on what Deadshore works out.")

set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION science)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_NAME deadshore)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_DEPENDS "fonts-dejavu-core")
set(CPACK_DEBIAN_PROGRAM_PACKAGE_RECOMMENDS "libopenblas0")  # the factorisation's speed
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_NAME deadshore-dev)
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_SECTION libdevel)
# As in io/deadshoreConfig.cmake.in: what a program that links these needs beside them.
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_DEPENDS
    "libeigen3-dev, libspectra-dev, libsuitesparse-dev, libopenblas-dev, libfmt-dev, libtomlplusplus-dev, nlohmann-json3-dev, libudunits2-dev, libvtk9-dev, libpango1.0-dev, libglib2.0-dev, pkg-config")
include(CPack)
