#include "viz/view/display.h"

#include <GL/glx.h>
#include <X11/Xlib.h>
#include <array>
#include <memory>

namespace deadshore::viz {

std::string fault_of_display() {
  const std::unique_ptr<Display, int (*)(Display*)> display(XOpenDisplay(nullptr), XCloseDisplay);
  if (!display) {
    return "no display to draw on: the view needs an X display (or run it with xvfb-run)";
  }
  int ignored = 0;
  if (XQueryExtension(display.get(), "GLX", &ignored, &ignored, &ignored) == 0) {
    return "the display cannot draw in three dimensions: it has no GLX";
  }
  std::array<int, 13> wanted = {GLX_RGBA,
                                GLX_DOUBLEBUFFER,
                                GLX_RED_SIZE,
                                8,
                                GLX_GREEN_SIZE,
                                8,
                                GLX_BLUE_SIZE,
                                8,
                                GLX_DEPTH_SIZE,
                                16,
                                None,
                                0,
                                0};
  const std::unique_ptr<XVisualInfo, int (*)(void*)> visual(
      glXChooseVisual(display.get(), DefaultScreen(display.get()), wanted.data()), XFree);
  if (!visual) return "the display has too few colours: the view needs 24 bits and GLX";
  return "";
}

}  // namespace deadshore::viz
