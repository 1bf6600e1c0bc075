#include "io/job/written_values.h"

namespace deadshore::io {

namespace {

void check_value(const JobTable& table, const SchemaKey& key) {
  switch (key.kind) {
    case KeyKind::text:
      return static_cast<void>(table.text(key.name));
    case KeyKind::number:
      return static_cast<void>(table.number(key.name));
    case KeyKind::quantity:
      return static_cast<void>(table.quantity(key.name));
    case KeyKind::quantity_or_top:
      return static_cast<void>(table.quantity_unless_top(key.name));
    case KeyKind::choice:
      return static_cast<void>(table.choice(key.name));
    case KeyKind::choices:
      return static_cast<void>(table.choices(key.name));
    case KeyKind::texts:
      return static_cast<void>(table.texts(key.name));
    case KeyKind::quantities:
      return static_cast<void>(table.quantities(key.name));
    case KeyKind::outline:
      return static_cast<void>(table.outline(key.name));
    case KeyKind::stretches:
      return static_cast<void>(table.stretches(key.name));
    case KeyKind::flag:
      return static_cast<void>(table.flag(key.name));
    case KeyKind::layers:
      return static_cast<void>(table.layers(key.name));
  }
}

}  // namespace

void check_written_values(const JobTable& table, const SchemaTable& schema) {
  for (const SchemaKey& key : schema.keys) {
    if (table.has(key.name)) check_value(table, key);
  }
  for (const SchemaTable& inner : job_schema()) {
    if (inner.form == TableForm::root || parent_of(inner) != schema.name) continue;
    for (const NamedTable& entry : table.tables(own_name(inner))) {
      check_written_values(entry.table, inner);
    }
  }
}

}  // namespace deadshore::io
