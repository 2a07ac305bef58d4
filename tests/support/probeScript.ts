/** A small script in place of the add-on: it answers what reaches it, so that the platform's rules can be tested. */
export const PROBE_SCRIPT = `
/**
 * What an argument is.
 *
 * @param {any} value Anything.
 * @param {any} [second] Anything else.
 * @return {string} Its kind and value.
 * @customfunction
 */
function PROBE_KIND(value, second) {
  function kindOf(x) {
    if (x === undefined) return 'missing';
    if (Array.isArray(x)) return JSON.stringify(x);
    if (x instanceof Date) return 'date ' + x.toISOString();
    return typeof x + ' ' + JSON.stringify(x);
  }
  return arguments.length > 1 ? kindOf(value) + ' & ' + kindOf(second) : kindOf(value);
}

/**
 * Numbers downwards with their squares.
 *
 * @param {number} count How many.
 * @customfunction
 */
function PROBE_TABLE(count) {
  var rows = [];
  for (var i = 1; i <= count; i++) rows.push([i, i * i]);
  return rows;
}

/** A list. @customfunction */
function PROBE_LIST() { return [3, 4, 5]; }

/** Fails. @customfunction */
function PROBE_FAIL() { throw new Error('Wall 4: "12-6" is not a length.'); }

/** A day. @customfunction */
function PROBE_DAY() { return new Date(Date.UTC(2026, 0, 31)); }

/** Tries to write. @customfunction */
function PROBE_WRITE() { SpreadsheetApp.getActiveSheet().getRange(1, 1).setValue('changed'); return 'written'; }

/** Reads. @customfunction */
function PROBE_READ() { return SpreadsheetApp.getActiveSheet().getRange(1, 1).getValue(); }

/** Never ends. @customfunction */
function PROBE_LOOP() { for (;;) {} }

/**
 * Uses a global of a page or of Node.
 *
 * @param {string} name Its name.
 * @customfunction
 */
function PROBE_GLOBAL(name) {
  switch (name) {
    case 'setTimeout': return typeof setTimeout(function () {}, 0);
    case 'fetch': return typeof fetch('');
    case 'URL': return typeof new URL('');
    case 'TextEncoder': return typeof new TextEncoder();
    case 'structuredClone': return typeof structuredClone(1);
    case 'performance': return typeof performance.now();
    case 'crypto': return typeof crypto.randomUUID();
    case 'process': return typeof process.env;
    case 'require': return typeof require('fs');
    case 'window': return typeof window.document;
    case 'document': return typeof document.body;
    case 'Intl': return typeof Intl.NumberFormat;
    case 'WebAssembly': return typeof WebAssembly.compile;
  }
}

/** Not documented as a custom function. */
function hiddenHelper() { return 1; }

function onOpen(e) {
  SpreadsheetApp.getUi().createAddonMenu().addItem('Plan a floor', 'openPage').addSeparator().addToUi();
}

function openPage() {
  SpreadsheetApp.getUi().showSidebar(HtmlService.createHtmlOutputFromFile('Sidebar').setTitle('Probe'));
}

function echo(value) { return value; }
function today() { return new Date(0); }
function private_() { return 1; }
function realm(value) { return (value instanceof Array) + ' ' + (value[0] instanceof Object); }
function fails() { throw new Error('No room is entered.'); }

function readRealm() {
  var range = SpreadsheetApp.getActiveSheet().getRange('A1:B2');
  return (range.getValues() instanceof Array) + ' ' + (range.getValues()[0] instanceof Array);
}

/** Writes a formula and reads its value in the same run. */
function writeAndRead() {
  var sheet = SpreadsheetApp.getActiveSheet();
  sheet.getRange('A1').setValue(7);
  sheet.getRange('A2').setFormula('=A1*6');
  SpreadsheetApp.flush();
  return sheet.getRange('A2').getValue();
}
`;
