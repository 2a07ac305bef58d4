// Placeholder, to be replaced whole: it lets the page be built before it is written.
document.title = 'Plank Ledger';
