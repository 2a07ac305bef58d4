import type { Book } from './book';
import { strict } from './strict';

type Filter = GoogleAppsScript.Spreadsheet.Filter;
type Criteria = GoogleAppsScript.Spreadsheet.FilterCriteria;
type CriteriaBuilder = GoogleAppsScript.Spreadsheet.FilterCriteriaBuilder;

/** The filter of a tab that has one. */
export function filterOf(book: Book, tabId: string): Filter {
  const filter: Filter = strict<Filter>(book, 'Filter', {
    remove: () => void book.engine.apply([{ kind: 'remove filters', tabId }]),
    setColumnFilterCriteria: (column: number, criteria: Criteria | null) => {
      const [zone] = book.engine.filters(tabId);
      if (!zone) throw new Error('The filter was removed.');
      const hidden = [...(criteria?.getHiddenValues() ?? [])];
      book.engine.apply([{ kind: 'filter values', tabId, row: zone.top, column: column - 1, hidden }]);
      return filter;
    },
  } satisfies Partial<Filter>);
  return filter;
}

/** What a filter hides; only lists of values are implemented. */
export function newFilterCriteria(book: Book): CriteriaBuilder {
  let hidden: readonly string[] = [];
  const builder: CriteriaBuilder = strict<CriteriaBuilder>(book, 'FilterCriteriaBuilder', {
    setHiddenValues: (values: readonly string[]) => {
      hidden = [...values];
      return builder;
    },
    build: () =>
      strict<Criteria>(book, 'FilterCriteria', { getHiddenValues: () => [...hidden] } satisfies Partial<Criteria>),
  } satisfies Partial<CriteriaBuilder>);
  return builder;
}
