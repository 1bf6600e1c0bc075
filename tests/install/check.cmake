# Installs into a scratch folder, then configures, builds and runs a stranger's program against it.
# Variables: BUILD (build folder), SOURCE (this folder), SCRATCH, JOB, FLAGS
file(REMOVE_RECURSE ${SCRATCH})
function(must)
  execute_process(COMMAND ${ARGN} RESULT_VARIABLE result OUTPUT_VARIABLE output ERROR_VARIABLE output)
  if(result)
    message(FATAL_ERROR "${ARGN}\n${output}")
  endif()
endfunction()
must(${CMAKE_COMMAND} --install ${BUILD} --prefix ${SCRATCH}/prefix)
must(${CMAKE_COMMAND} -S ${SOURCE} -B ${SCRATCH}/build -G Ninja -DCMAKE_BUILD_TYPE=Release
     -DCMAKE_PREFIX_PATH=${SCRATCH}/prefix "-DCMAKE_CXX_FLAGS=${FLAGS}")
must(${CMAKE_COMMAND} --build ${SCRATCH}/build)
must(${SCRATCH}/build/stranger ${JOB})
