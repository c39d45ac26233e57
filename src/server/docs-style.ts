/** System colours only, so that the page follows the reader's own light, dark or high-contrast scheme. */
export const docsStyle = `
:root { font: 100%/1.5 system-ui, sans-serif; color: CanvasText; background: Canvas; }
body { max-width: 72rem; margin: 0 auto; padding: 1.5rem; }
h1, h2, h3 { line-height: 1.2; }
article { border-top: 1px solid GrayText; padding-top: 0.5rem; margin-top: 2rem; }
code, pre { font-family: ui-monospace, monospace; font-size: 0.9em; }
pre { overflow-x: auto; border: 1px solid GrayText; padding: 0.75rem; white-space: pre-wrap; overflow-wrap: anywhere; }
.scroll { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; font-variant-numeric: tabular-nums; }
th, td { text-align: start; vertical-align: top; padding: 0.3rem 0.75rem 0.3rem 0; border-bottom: 1px solid GrayText; }
a { color: LinkText; }
nav a { margin-inline-end: 1rem; }
@media print { nav { display: none; } }
`;
