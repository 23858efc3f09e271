// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/quantities/working_model.h"

#include <array>

#include "core/units/show.h"

namespace skeinproof {
namespace {

// The firmest ground first.
constexpr std::array ground_order = {Ground::scale, Ground::swatch, Ground::chart,     Ground::gauge,
                                     Ground::sheet, Ground::label,  Ground::reference, Ground::house};

QString from(const std::string& text) { return QString::fromStdString(text); }
QString from(std::string_view text) {
  return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

}  // namespace

WorkingModel::~WorkingModel() = default;

void WorkingModel::show(Step step, const ReaderStyle& reader) {
  beginResetModel();
  reader_ = reader;
  roots_.assign(1, std::move(step));
  nodes_.assign(1, Node{});
  nodes_.push_back(Node{&roots_.front(), 0, 0, {}});
  nodes_.front().children.push_back(1);
  grow(1);
  endResetModel();
}

void WorkingModel::clear() {
  beginResetModel();
  roots_.clear();
  nodes_.assign(1, Node{});
  endResetModel();
}

void WorkingModel::grow(std::size_t node) {
  const Step* step = nodes_[node].step;
  for (std::size_t part = 0; part < step->parts.size(); ++part) {
    const std::size_t child = nodes_.size();
    nodes_.push_back(Node{&step->parts[part], node, static_cast<int>(part), {}});
    nodes_[node].children.push_back(child);
    grow(child);
  }
}

const WorkingModel::Node& WorkingModel::node_of(const QModelIndex& index) const {
  return nodes_[index.isValid() ? static_cast<std::size_t>(index.internalId()) : 0];
}

const Step* WorkingModel::step(const QModelIndex& index) const {
  return index.isValid() ? node_of(index).step : nullptr;
}

QModelIndex WorkingModel::ground() const {
  for (const Ground wanted : ground_order)
    for (std::size_t node = 1; node < nodes_.size(); ++node)
      if (nodes_[node].step->ground == wanted && nodes_[node].children.empty())
        return createIndex(nodes_[node].row, 0, static_cast<quintptr>(node));
  return index(0, 0);
}

QString WorkingModel::figure_text(const Step& step) const {
  const QString figure = from(show_number(step.figure, step.decimals, reader_.numbers));
  const QString unit = from(word_of(step.unit));
  if (step.unit == FigureUnit::skeins && step.figure == 1) return figure + QLatin1Char(' ') + tr("skein");
  return unit.isEmpty() ? figure : figure + QLatin1Char(' ') + unit;
}

QModelIndex WorkingModel::index(int row, int column, const QModelIndex& parent) const {
  const Node& node = node_of(parent);
  if (row < 0 || column < 0 || column >= ColumnCount || static_cast<std::size_t>(row) >= node.children.size())
    return {};
  return createIndex(row, column, static_cast<quintptr>(node.children[static_cast<std::size_t>(row)]));
}

QModelIndex WorkingModel::parent(const QModelIndex& index) const {
  if (!index.isValid()) return {};
  const std::size_t parent = node_of(index).parent;
  return parent == 0 ? QModelIndex() : createIndex(nodes_[parent].row, 0, static_cast<quintptr>(parent));
}

int WorkingModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() && parent.column() > 0 ? 0 : static_cast<int>(node_of(parent).children.size());
}
int WorkingModel::columnCount(const QModelIndex&) const { return ColumnCount; }

QVariant WorkingModel::data(const QModelIndex& index, int role) const {
  const Step* shown = step(index);
  if (!shown) return {};
  if (role == GroundRole) return from(word_of(shown->ground));
  if (role == Qt::AccessibleTextRole) {
    const QString ground =
        shown->ground == Ground::none ? QString() : tr(", %1").arg(from(word_of(shown->ground)));
    return tr("%1: %2%3, %4").arg(from(shown->label), from(shown->how), ground, figure_text(*shown));
  }
  if (role == Qt::ToolTipRole)
    return shown->source.empty() ? from(shown->how)
                                 : from(shown->how) + QLatin1Char('\n') + from(shown->source);
  if (role == Qt::TextAlignmentRole && index.column() == FigureColumn)
    return QVariant::fromValue(Qt::Alignment(Qt::AlignRight | Qt::AlignVCenter));
  if (role != Qt::DisplayRole) return {};
  switch (index.column()) {
    case StepColumn:
      return from(shown->label);
    case HowColumn:
      return from(shown->how);
    case FigureColumn:
      return figure_text(*shown);
    case SourceColumn:
      return from(shown->source);
    default:
      return {};
  }
}

QVariant WorkingModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal) return {};
  if (role == Qt::TextAlignmentRole)
    return QVariant::fromValue(
        Qt::Alignment((section == FigureColumn ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter));
  if (role != Qt::DisplayRole) return {};
  switch (section) {
    case StepColumn:
      return tr("Step");
    case HowColumn:
      return tr("How, and from what");
    case FigureColumn:
      return tr("Figure");
    case SourceColumn:
      return tr("Source");
    default:
      return {};
  }
}

}  // namespace skeinproof
