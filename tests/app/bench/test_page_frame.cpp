// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/bench/page_frame.h"

#include <QScrollBar>
#include <QSplitter>

#include "tests/app/bench/window_fixture.h"

namespace skeinproof {
namespace {

// Two panes side by side, each with a field, that cannot be narrower than 800.
class WidePage : public Page {
 public:
  WidePage(OpenPattern& open, QWidget* parent) : Page(open, parent), splitter(new QSplitter) {
    setObjectName("Wide");
    for (QLineEdit*& field : fields) {
      field = new QLineEdit;
      field->setMinimumWidth(100);
      splitter->addWidget(field);
    }
    auto* layout = new QVBoxLayout(this);
    layout->addWidget(splitter);
    setMinimumWidth(800);
  }
  QSplitter* splitter;
  std::array<QLineEdit*, 2> fields{};
};

class PageFrames : public testing::Test {
 protected:
  PageFrames() { EXPECT_TRUE(folder.isValid()); }
  WidePage* put_into(PageFrame*& frame) {
    auto* page = new WidePage(open, nullptr);
    frame = new PageFrame(page, settings, &window);
    frame->resize(900, 200);
    return page;
  }
  QTemporaryDir folder;
  QSettings store{folder.filePath("settings.ini"), QSettings::IniFormat};
  PersonSettings settings{store};
  OpenPattern open;
  QWidget window;
};

TEST_F(PageFrames, SplittersStayAsThePersonLeftThem) {
  PageFrame* frame = nullptr;
  WidePage* page = put_into(frame);
  window.show();
  page->splitter->setSizes({600, 200});
  emit page->splitter->splitterMoved(600, 1);
  const QList<int> sizes = page->splitter->sizes();
  ASSERT_GT(sizes[0], 2 * sizes[1]);
  PageFrame* next = nullptr;
  WidePage* again = put_into(next);
  next->show();
  EXPECT_EQ(again->splitter->sizes(), sizes);
}

TEST_F(PageFrames, APageTooWideForTheWindowScrollsToTheFocus) {
  PageFrame* frame = nullptr;
  WidePage* page = put_into(frame);
  frame->resize(300, 200);
  EXPECT_LT(frame->minimumSizeHint().width(), 300);
  window.show();
  window.activateWindow();
  ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
  EXPECT_EQ(frame->horizontalScrollBar()->value(), 0);
  page->fields[1]->setFocus();
  const int cursor = page->fields[1]->mapTo(page, QPoint(0, 0)).x();
  EXPECT_GT(frame->horizontalScrollBar()->value() + frame->viewport()->width(), cursor);
  EXPECT_GT(cursor, frame->viewport()->width());
  page->fields[0]->setFocus();
  EXPECT_LT(frame->horizontalScrollBar()->value(), 100);
}

}  // namespace
}  // namespace skeinproof
