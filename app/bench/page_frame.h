// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QScrollArea>

namespace skeinproof {

class Page;
class PersonSettings;

// Holds one page of the window. Where the window is smaller than the page can be, as with large text, the
// page scrolls and follows the focus; its splitters stay as the person left them.
class PageFrame : public QScrollArea {
  Q_OBJECT

 public:
  PageFrame(Page* page, PersonSettings& settings, QWidget* parent = nullptr);

 private:
  void remember_splitters(Page* page, PersonSettings& settings);
  void follow_focus(QWidget* now);
};

}  // namespace skeinproof
