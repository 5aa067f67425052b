package candlebench.web;

/** The screens a bench is looked at on. */
enum Screen {
  TABLET(1280, 800, false),
  TABLET_DIM(1280, 800, true),
  LARGE(1920, 1080, false),
  PHONE(390, 844, false);

  private final int width;
  private final int height;
  private final boolean dim;

  Screen(int width, int height, boolean dim) {
    this.width = width;
    this.height = height;
    this.dim = dim;
  }

  int width() {
    return width;
  }

  int height() {
    return height;
  }

  boolean dim() {
    return dim;
  }

  boolean lies() {
    return width > height;
  }
}
