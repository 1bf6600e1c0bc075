# Runs suites of a test program on the BLAS kernel that OPENBLAS_CORETYPE asks for; fails where a
# suite has no test.
#   cmake -DTESTS=<program> -DSUITES=<pattern>:... -P kernel.cmake
string(REPLACE ":" ";" suites "${SUITES}")
foreach(suite IN LISTS suites)
  execute_process(COMMAND ${TESTS} --gtest_list_tests --gtest_filter=${suite}
                  OUTPUT_VARIABLE found COMMAND_ERROR_IS_FATAL ANY)
  if(NOT found MATCHES "\n  [A-Za-z]")
    message(FATAL_ERROR "${TESTS} has no test ${suite}")
  endif()
endforeach()
execute_process(COMMAND ${TESTS} --gtest_brief=1 --gtest_filter=${SUITES}
                COMMAND_ERROR_IS_FATAL ANY)
