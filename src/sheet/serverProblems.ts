/** Sentences about what the page asks the spreadsheet to do: what, where, found, wanted. */

export const serverProblems = {
  someoneElse: () => 'Somebody else is filling tabs of this spreadsheet just now. Wait a moment, then try again.',

  noSuchTab: (name: string) => `There is no tab "${shortened(name)}" any more. Fill it again.`,

  picture: (rowNumber: number, columnNumber: number) =>
    `There is a picture in row ${rowNumber}, column ${columnNumber} of the tab, which cannot be kept. Put it over the cells or move it to another tab, then fill again.`,

  noTab: () => 'The sidebar sent something that is not a tab. Reload the spreadsheet and open the sidebar again.',
};

function shortened(found: string): string {
  return found.length > 40 ? `${found.slice(0, 37)}...` : found;
}
