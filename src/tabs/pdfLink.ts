/**
 * A link that makes a PDF of one tab, opened by the person in their own session, so that no further permission is
 * needed. The parameters are those many public repositories use; the service does not document them.
 */

export interface PdfPage {
  readonly spreadsheetId: string;
  /** `Sheet.getSheetId()` of the tab. */
  readonly sheetId: number;
  readonly paper: 'A4' | 'letter';
  readonly landscape: boolean;
}

/** The tab alone, fitted to the page's width, without gridlines, sheet name, title or page numbers. */
export function pdfLink({ spreadsheetId, sheetId, paper, landscape }: PdfPage): string {
  const options = [
    'format=pdf',
    `gid=${sheetId}`,
    `size=${paper}`,
    `portrait=${!landscape}`,
    'fitw=true',
    'gridlines=false',
    'sheetnames=false',
    'printtitle=false',
    'pagenum=UNDEFINED',
    'fzr=true',
    ...['top', 'bottom', 'left', 'right'].map((side) => `${side}_margin=0.75`),
  ];
  return `https://docs.google.com/spreadsheets/d/${spreadsheetId}/export?${options.join('&')}`;
}
