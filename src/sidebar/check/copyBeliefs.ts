/** What a copy over cells does: every tab that is filled again is copied over in one go. */
import { LIVE, RANGE, type SheetBelief } from './belief';
import type { Trial } from './trial';

type Range = GoogleAppsScript.Spreadsheet.Range;

/** The same cells after a copy, whatever was done to the place before. */
function copyBelief(
  what: string,
  undone: (target: Range, trial: Trial) => void,
  expected: readonly string[] = ['1,2,3'],
): SheetBelief {
  return {
    what: `a copy over ${what}`,
    expected,
    source: LIVE,
    ask(trial) {
      const [from, between, target] = [trial.cells(3), trial.cells(3), trial.cells(3)];
      from.setValues([[1, 2, 3]]);
      between.setValues([[7, 8, 9]]);
      target.setValues([[4, 5, 6]]);
      undone(target, trial);
      from.copyTo(target);
      trial.app.flush();
      return [target.getValues()];
    },
    tell: ([rows]) => (rows as unknown[][]).join(),
  };
}

/** Hides the rows of a filter that show 4. */
function filtered({ sheet, app }: Trial): GoogleAppsScript.Spreadsheet.Filter {
  const filter = sheet.getRange(2, 1, 2, 3).createFilter();
  filter.setColumnFilterCriteria(1, app.newFilterCriteria().setHiddenValues(['4']).build());
  app.flush();
  return filter;
}

export const COPY_BELIEFS: readonly SheetBelief[] = [
  copyBelief('cells that were merged, taken apart', (target) => {
    target.merge();
    target.breakApart();
  }),
  copyBelief('a row that was hidden, shown again', (target, { sheet }) => {
    sheet.hideRows(target.getRow());
    sheet.showRows(target.getRow());
  }),
  copyBelief('frozen columns, let go', (_, { sheet }) => {
    sheet.setFrozenColumns(2);
    sheet.setFrozenColumns(0);
  }),
  copyBelief('a row that a filter hid, the filter removed', (_, trial) => void filtered(trial).remove()),
  copyBelief('cells with a rule that takes one word only', (target, { app }) => {
    target.setDataValidation(app.newDataValidation().requireValueInList(['word']).setAllowInvalid(false).build());
  }),
  copyBelief('cells that are guarded by a warning', (target) => void target.protect().setWarningOnly(true)),
  // Looks of a person's, which nothing depends on.
  copyBelief('rows of alternating colours', (target) => void target.applyRowBanding(), []),
  copyBelief(
    'a row of a group that is closed',
    (target, { sheet }) => {
      target.shiftRowGroupDepth(1);
      sheet.collapseAllRowGroups();
    },
    [],
  ),
  // Before every copy the filter is removed, hidden rows are shown and merges taken apart: these are only to know why.
  copyBelief('a row that a filter hides', (_, trial) => void filtered(trial), []),
  copyBelief('a hidden row', (target, { sheet }) => sheet.hideRows(target.getRow()), []),
  copyBelief('merged cells', (target) => void target.merge(), []),
  {
    what: 'a copy is as large as what is copied, and a formula in it points as before',
    expected: ['1, 1, , 8'],
    source: RANGE,
    ask({ cells, sheet, app }) {
      const [from, target] = [cells(3), cells(3)];
      from.setValues([[1, '=A1', '']]);
      target.setValues([[5, 6, 7]]);
      sheet.getRange(2, 4, 1, 1).setValues([[8]]);
      from.copyTo(target);
      app.flush();
      return [sheet.getRange(2, 1, 1, 4).getValues()];
    },
    tell: ([rows]) => (rows as unknown[][])[0].join(', '),
  },
  {
    what: 'after a copy boxes are set anew: those of the place are gone, a tick stays',
    expected: ['true, null'],
    source: RANGE,
    ask({ cells, sheet, app }) {
      const [from, target] = [cells(2), cells(2)];
      const box = app.newDataValidation().requireCheckbox().build();
      from.setDataValidations([[box, null]]);
      from.setValues([[true, '']]);
      target.setDataValidations([[null, box]]);
      from.copyTo(target);
      target.clearDataValidations();
      target.setDataValidations([[box, null]]);
      app.flush();
      // Null is a cell without a box.
      return [sheet.getRange(2, 1).isChecked(), sheet.getRange(2, 2).isChecked()];
    },
    tell: (boxes) => boxes.map(String).join(', '),
  },
  {
    what: 'a copy takes boxes along',
    expected: [],
    source: LIVE,
    ask({ cells, app }) {
      const [from, target] = [cells(1), cells(1)];
      from.setDataValidations([[app.newDataValidation().requireCheckbox().build()]]);
      from.copyTo(target);
      app.flush();
      return [target.isChecked()];
    },
    tell: ([box]) => (box === null ? 'no' : 'yes'),
  },
];
